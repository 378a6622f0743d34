import { readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { posix } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';
import { carriedPackages } from '../scripts/bundle/bundle-packages.ts';

/** From the top to the bottom: a file imports from its own folder and from those above it. */
const layers = [
  ...['text', 'units', 'physics', 'statistics', 'plots', 'registry', 'knowledge', 'bench', 'evidence'],
  ...[
    'rules',
    'scaffold',
    'tables',
    'prediction',
    'decisions',
    'report',
    'export',
    'editor',
    'site',
    'api',
    'host',
    'commands',
  ],
];

/** Outside of the layers: one that everybody may import, and those that may import everything. */
const shared = 'result.ts';
const entrances = ['core.ts', 'index.ts', 'cli.ts'];

const root = fileURLToPath(new URL('../src/', import.meta.url));
const text = (file: string) => readFileSync(root + file, 'utf8');
const code = (file: string) => text(file).replace(/\/\*.*?\*\/|^\s*\/\/.*?$/gms, '');
const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => /\.[jt]s$/.test(file))
  .sort();
const written = files.filter((file) => !file.includes('/generated/'));

const importPattern = /^(?:import|export)\s(?:[^;']*?\sfrom\s)?'([^']+)'|\bimport\(\s*'([^']+)'/gm;

const startingPattern = /^(?:import|export)\s(?!type\s)(?:[^;']*?\sfrom\s)?'([^']+)'/gm;

/** Everything that a file imports: paths from `src/` for its own files, names for packages. */
const importsOf: ReadonlyMap<string, readonly string[]> = new Map(
  files.map((file) => [
    file,
    [...text(file).matchAll(importPattern)].map(([, statically, dynamically]) => {
      const target = statically ?? dynamically ?? '';
      return target.startsWith('.') ? posix.join(posix.dirname(file), target) : target;
    }),
  ]),
);

/** `FILE → TARGET` of the imports that a test is about. */
function importsWhere(wanted: (target: string, file: string) => boolean): string[] {
  return [...importsOf].flatMap(([file, targets]) =>
    targets.filter((target) => wanted(target, file)).map((target) => `${file} → ${target}`),
  );
}

/** The files whose code, without its comments, is of the kind that a test is about. */
function filesWhere(wanted: (content: string) => boolean): string[] {
  return written.filter((file) => wanted(code(file)));
}

function folderOf(path: string): string {
  return path.split('/')[0] ?? '';
}

const { dependencies, devDependencies } = JSON.parse(text('../package.json')) as {
  dependencies: object;
  devDependencies: object;
};

/** Packages that only the command line needs: they come within its bundle, so that no user installs them. */
const bundled = {
  within: ['editor', 'commands'],
  packages: [
    'commander',
    'vscode-jsonrpc',
    'vscode-languageserver-textdocument',
    'vscode-languageserver-types',
  ],
} as const;

function isBundled(target: string): boolean {
  return bundled.packages.some((name) => name === packageOf(target));
}

/** Name of the package that a target such as `@scope/name/part.js` belongs to. */
function packageOf(target: string): string {
  return /^(?:@[^/]+\/)?[^/]+/.exec(target)?.[0] ?? '';
}

/** Imports of files of the project, as opposed to packages. */
function isOwn(target: string): boolean {
  const isInstalled = packageOf(target) in { ...dependencies, ...devDependencies };
  return /\.(?:ts|js|json)$/.test(target) && !isInstalled && !isBundled(target);
}

test('the imports are found', () => {
  expect(importsOf.get('host/load-registry.ts')).toEqual(
    expect.arrayContaining(['node:path', 'registry/load-files.ts', 'host/registry-files.ts']),
  );
  expect(importsWhere((target) => isOwn(target) && !files.includes(target))).toEqual([]);
});

describe('the layers', () => {
  test('each file stands in one of them, or is an entrance', () => {
    const strays = files.filter(
      (file) => !layers.includes(folderOf(file)) && ![shared, ...entrances].includes(file),
    );
    expect(strays).toEqual([]);
  });

  test('no file imports from a layer below its own', () => {
    const downwards = importsWhere((target, file) => {
      if (!isOwn(target) || target === shared || entrances.includes(file)) return false;
      const layer = layers.indexOf(folderOf(target));
      return layer < 0 || layer > layers.indexOf(folderOf(file));
    });
    expect(downwards).toEqual([]);
  });

  test('the questions of `decisions/` do not know each other', () => {
    const neighbours = importsWhere((target, file) => {
      const [from, to] = [file.split('/'), target.split('/')];
      return from[0] === 'decisions' && to[0] === 'decisions' && from[1] !== to[1];
    });
    expect(neighbours).toEqual([]);
  });

  test('`host/` is imported by commands and entrances alone', () => {
    const within = ['host', 'commands', 'index.ts', 'cli.ts'];
    const strangers = importsWhere(
      (target, file) => folderOf(target) === 'host' && !within.includes(folderOf(file)),
    );
    expect(strangers).toEqual([]);
  });

  test('`rules/` is a room to be asked through its engine, by commands, reports and the catalogue', () => {
    const within = ['rules', 'report', 'editor', 'site', 'api', 'commands'];
    const doors = ['rules/engine', 'rules/generated'];
    const strangers = importsWhere(
      (target, file) =>
        folderOf(target) === 'rules' &&
        folderOf(file) !== 'rules' &&
        !([...within, ...entrances].includes(folderOf(file)) && doors.includes(posix.dirname(target))),
    );
    expect(strangers).toEqual([]);
  });

  test('no folder holds more files than one can read at a glance', () => {
    const folders = [...new Set(written.map((file) => posix.dirname(file)))];
    const crowded = folders.filter((folder) => {
      const most = folder.startsWith('rules/') ? 40 : 30;
      return written.filter((file) => posix.dirname(file) === folder).length > most;
    });
    expect(crowded).toEqual([]);
  });

  test('no file leads back to itself', () => {
    expect([...importsOf.keys()].flatMap((file) => cycleFrom(file))).toEqual([]);
  });
});

/** A way from a file back to it, or nothing. */
function cycleFrom(start: string): string[] {
  const seen = new Set<string>();
  const ways = (importsOf.get(start) ?? []).map((target) => [start, target]);
  for (let way = ways.pop(); way !== undefined; way = ways.pop()) {
    const last = way.at(-1) ?? '';
    if (last === start) return [way.join(' → ')];
    if (seen.has(last)) continue;
    seen.add(last);
    for (const target of importsOf.get(last) ?? []) ways.push([...way, target]);
  }
  return [];
}

describe('a command loads at its start', () => {
  it.each([
    ['cli.ts', ['commander']],
    ['commands/init.ts', ['commander']],
  ])('with %s no package but %j', (file, packages) => {
    expect(packagesBehind(file)).toEqual(packages);
  });

  it.each(['check', 'match', 'compare', 'claims', 'diff', 'new', 'rules'])(
    'with %s neither questions, plots nor templates',
    (command) => {
      const heavy = ['@clack/prompts', 'd3-array', 'd3-shape', 'mustache'];
      const [file = ''] = [`commands/${command}.ts`, `commands/${command}/${command}.ts`].filter((path) =>
        files.includes(path),
      );
      expect(packagesBehind(file).filter((name) => heavy.includes(name))).toEqual([]);
    },
  );
});

/** Packages that come in with a file: what it imports at its start, and what that imports, but no types. */
function packagesBehind(start: string): string[] {
  const seen = new Set([start]);
  for (const file of seen) {
    if (!files.includes(file)) continue;
    for (const [, target = ''] of code(file).matchAll(startingPattern)) {
      if (isBuiltin(target)) continue;
      seen.add(target.startsWith('.') ? posix.join(posix.dirname(file), target) : target);
    }
  }
  return [...seen].filter((target) => !isOwn(target)).sort();
}

/** What a file takes from `node:fs`, types apart; `*` where it takes all. */
function namesFromFs(file: string): string[] {
  const target = /^node:fs(?:\/promises)?$|^fs(?:\/promises)?$/;
  const named = [...code(file).matchAll(/^import\s+(?:\{([^}]*)\}|[^{';]+)\s+from\s+'([^']+)'/gm)]
    .filter(([, , from = '']) => target.test(from))
    .flatMap(([, names]) => names?.split(',').map((name) => name.trim()) ?? ['*'])
    .filter((name) => name !== '' && !name.startsWith('type '));
  const others = (importsOf.get(file) ?? []).filter((from) => target.test(from)).length;
  return others > 0 && named.length === 0 && !/import type|\btype /.test(code(file)) ? ['*'] : named;
}

/** The files that may touch other files, programs and terminals; all others run in a browser too. */
function isAtTheEdge(file: string): boolean {
  return file === 'cli.ts' || ['host', 'commands'].includes(folderOf(file));
}

describe('effects stay at the edge:', () => {
  test("Node's modules are imported by `host/`, by commands and at the entrance", () => {
    expect(importsWhere((target, file) => isBuiltin(target) && !isAtTheEdge(file))).toEqual([]);
  });

  test('files are written by `host/writing/` alone; elsewhere `node:fs` reads', () => {
    const reading = [
      'existsSync',
      'lstatSync',
      'readdirSync',
      'readFileSync',
      'realpathSync',
      'statSync',
      'watch',
    ];
    // It opens files with flags for reading.
    const opening = ['closeSync', 'constants', 'fstatSync', 'openSync', 'readSync'];
    const foreign = written.flatMap((file) => {
      if (file.startsWith('host/writing/')) return [];
      const allowed = file === 'host/read-plain-file.ts' ? opening : reading;
      return namesFromFs(file)
        .filter((name) => !allowed.includes(name))
        .map((name) => `${file}: ${name}`);
    });
    expect(foreign).toEqual([]);
    expect(namesFromFs('host/writing/put-file.ts')).toContain('renameSync');
    expect(filesWhere((content) => /write-file-atomic|getBuiltinModule|createRequire/.test(content))).toEqual(
      ['host/kept-code.ts'],
    );
  });

  test("Node's own globals are used there alone", () => {
    const global = /\b(?:Buffer|NodeJS|process|__dirname|__filename|setImmediate|require)\b(?=[.([])/;
    expect(filesWhere((content) => global.test(content)).filter((file) => !isAtTheEdge(file))).toEqual([]);
  });

  test('JSON for others is written by `jsonText` alone, which defuses it', () => {
    expect(filesWhere((content) => /JSON\.stringify\([^;]*, null, /.test(content))).toEqual([
      'text/json-text.ts',
    ]);
  });

  test('commands print through `withSafeOutput` alone', () => {
    // The entrance hands `run` the streams, and `run` hands commands nothing but the safe context.
    const handing = filesWhere((content) => /\bwithSafeOutput\(/.test(content));
    expect(handing).toEqual(['commands/cli-context.ts', 'commands/run.ts']);
    const [, body = ''] = text('commands/run.ts').split('withSafeOutput(context);');
    expect(body).not.toContain('context');
    expect(
      importsWhere((target) => ['process', 'node:process', 'console', 'node:console'].includes(target)),
    ).toEqual([]);
  });

  test('nothing uses the network', () => {
    // The catalogue is served on loopback, to this machine alone.
    expect(
      importsWhere((target) => /^(?:node:)?(?:https?|http2|net|tls|dgram|dns)(?:\/|$)/.test(target)),
    ).toEqual(['host/serve-folder.ts → node:http']);
    // The bench page loads its own parts of the registry, and keeps its own files.
    expect(filesWhere((content) => /\bfetch\(|\bWebSocket\b/.test(content))).toEqual([
      'site/client/bench/bench-offline.ts',
      'site/client/bench/bench-page.ts',
    ]);
  });

  test('the clock is read at the entrances, that of the bench page among them', () => {
    expect(
      filesWhere((content) => /\bnew Date\(\)|\bDate\.now\b|\bperformance\.now\b/.test(content)),
    ).toEqual(['cli.ts', 'site/client/bench/bench-page.ts']);
  });

  test('the process is touched at the entrance, but for the folder that relative paths start from, and the name of a lock', () => {
    expect(
      filesWhere((content) => /\bprocess\./.test(content.replaceAll('base: string = process.cwd()', ''))),
    ).toEqual(['cli.ts', 'host/launch.ts', 'host/writing/writer.ts']);
  });

  test('chance comes from seeded generators only, but for the name of a draft', () => {
    expect(filesWhere((content) => /Math\.random|randomBytes|randomUUID|randomInt/.test(content))).toEqual([
      'site/client/bench/bench-page.ts',
    ]);
  });
});

describe('files', () => {
  test('have at most 300 lines', () => {
    expect(written.filter((file) => text(file).split('\n').length > 301)).toEqual([]);
  });

  test('of fewer than 15 lines serve two others at least, but for rules and entrances', () => {
    const few = written.filter((file) => text(file).split('\n').length <= 15);
    const own = few.filter(
      (file) => !isEntrance(file) && folderOf(file) !== 'rules' && file !== 'site/client/catalogue.ts',
    );
    expect(own.filter((file) => importersOf(file).length < 2)).toEqual([]);
  });

  test('export only what another file, a script or a test imports', () => {
    // Of the types of canonical numbers, one per dimension, the schemas need those of their keys.
    const judged = written.filter((file) => !isEntrance(file) && file !== 'units/canonical.ts');
    expect(judged.flatMap(unusedExports)).toEqual([]);
  });

  test('are named after a concept, in kebab-case', () => {
    const names = written.map((file) => posix.basename(file));
    expect(names.filter((name) => !/^[a-z0-9]+(?:-[a-z0-9]+)*\.ts$/.test(name))).toEqual([]);
    expect(names.filter((name) => /\b(?:utils?|helpers?|misc|common|lib)\b/.test(name))).toEqual([]);
  });

  test('import packages that a user gets with this one', () => {
    const missing = importsWhere(
      (target) =>
        !isOwn(target) && !isBuiltin(target) && !(packageOf(target) in dependencies) && !isBundled(target),
    );
    // Modules that carry their package with them, as they are built.
    const carrying = Object.entries(carriedPackages).map(([file, name]) => `${file}.ts → ${name}`);
    expect(missing.sort()).toEqual(carrying.sort());
    for (const name of Object.values(carriedPackages))
      expect(devDependencies).toHaveProperty([packageOf(name)]);
  });

  test('import bundled packages only where all is bundled', () => {
    for (const name of bundled.packages) expect(devDependencies).toHaveProperty(name);
    const elsewhere = importsWhere(
      (target, file) => isBundled(target) && !bundled.within.some((folder) => folder === folderOf(file)),
    );
    expect(elsewhere).toEqual([]);
    // Nothing that programs import leads there.
    const outside = importsWhere(
      (target, file) =>
        ['editor', 'commands'].includes(folderOf(target)) &&
        !['editor', 'commands', 'cli.ts'].includes(folderOf(file)),
    );
    expect(outside).toEqual([]);
  });
});

function isEntrance(file: string): boolean {
  return entrances.includes(file) || folderOf(file) === 'api';
}

/** The files that import one, but for those through which programs reach it. */
function importersOf(file: string): string[] {
  return [...importsOf].flatMap(([importer, targets]) =>
    targets.includes(file) && !isEntrance(importer) ? [importer] : [],
  );
}

/** What files of the project, its scripts and its tests take from a file: `FILE NAME`, or `FILE *` where it may be all. */
const taken = new Set(
  ['src', 'scripts', 'tests'].flatMap((folder) =>
    readdirSync(`${root}../${folder}`, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts'))
      .flatMap((file) => namesTakenBy(posix.join('..', folder, file.replaceAll('\\', '/')))),
  ),
);

function namesTakenBy(file: string): string[] {
  return [...text(file).matchAll(importPattern)].flatMap(([statement, statically, dynamically = '']) => {
    const target = posix
      .join('../src', posix.dirname(file), statically ?? dynamically)
      .replace('../src/', '');
    return statically === undefined
      ? [`${target} *`]
      : (statement.match(/\w+/g) ?? []).map((name) => `${target} ${name}`);
  });
}

/** Names that a file exports and that nobody takes. */
function unusedExports(file: string): string[] {
  const names = text(file).matchAll(/^export (?:async )?(?:function\*?|const|interface|type|class) (\w+)/gm);
  return [...names].flatMap(([, name]) =>
    taken.has(`${file} ${name}`) || taken.has(`${file} *`) ? [] : [`${file}: ${name}`],
  );
}

describe('what programs may import', () => {
  const groups = files.filter((file) => folderOf(file) === 'api');
  const exported = ['core.ts', 'index.ts', ...groups].flatMap((group) =>
    [...text(group).matchAll(/export (?:type )?\{([^}]*)\} from '([^']+)'/g)].flatMap(
      ([, names = '', from = '']) =>
        names
          .split(',')
          .map((name) => name.trim().replace(/^type /, ''))
          .filter((name) => name !== '')
          .map((name) => ({ group, name, file: posix.join(posix.dirname(group), from) })),
    ),
  );

  test('is explained by a comment at its declaration', () => {
    const unexplained = exported.filter(({ name, file }) => !isExplained(name, text(file)));
    expect(exported.length).toBeGreaterThan(150);
    expect(unexplained).toEqual([]);
  });

  test('stands in the package under the name of its group', () => {
    const { exports } = JSON.parse(text('../package.json')) as { exports: Record<string, unknown> };
    const built = (file: string) => ({
      types: {
        require: `./dist/${file.replace('.ts', '.d.cts')}`,
        default: `./dist/${file.replace('.ts', '.d.ts')}`,
      },
      default: `./dist/${file.replace('.ts', '.js')}`,
    });
    expect(exports).toMatchObject({
      '.': built('index.ts'),
      './core': built('core.ts'),
      ...Object.fromEntries(groups.map((file) => [`./${posix.basename(file, '.ts')}`, built(file)])),
    });
    expect(Object.values(exports).filter((entry) => typeof entry === 'object')).toHaveLength(
      groups.length + 2,
    );
  });

  test('holds every writer, but for the one that a page of the documentation is made with', () => {
    const writers = files.flatMap((file) =>
      [...text(file).matchAll(/^export function (format\w+(?:As|Csv)\w+|(?!ruleIndex)\w+Document)\(/gm)].map(
        ([, name]) => name,
      ),
    );
    const named = new Set(exported.map(({ name }) => name));
    expect(writers.length).toBeGreaterThan(10);
    expect(writers.filter((name) => name !== undefined && !named.has(name))).toEqual([]);
  });

  test('is called `format…`, or `draw…` for pictures, where it writes text', () => {
    const result = (name: string, file: string) =>
      new RegExp(`^export function ${name}\\b.*?\\): ([^\\n]*) \\{$`, 'ms').exec(text(file))?.[1];
    const writers = exported.filter(({ name, file }) => result(name, file) === 'string');
    const names = new Set(writers.map(({ name }) => name));
    expect(names.size).toBeGreaterThan(20);
    // Neither writes a document: one names a row, the other prepares a sentence for print.
    expect([...names].filter((name) => !/^(?:format|draw)[A-Z]/.test(name)).sort()).toEqual([
      'inPrint',
      'rowAddress',
    ]);
  });
});

function isExplained(name: string, content: string): boolean {
  return new RegExp(`\\*/\nexport (?:async )?(?:function\\*?|const|interface|type) ${name}\\b`).test(content);
}
