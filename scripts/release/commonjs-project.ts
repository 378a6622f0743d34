import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

/** A program of a CommonJS project that asks every entrance for something, and one that asks wrongly. */
const right = `import { checkRegistry, type Finding, loadFiles } from 'meltbounds';
import { reduceTrial } from 'meltbounds/bench';
import { kinds } from 'meltbounds/core';
import { beadArea } from 'meltbounds/physics';
import { drawPlot } from 'meltbounds/plots';
import { summarise } from 'meltbounds/report';
import { leastSquares } from 'meltbounds/statistics';
import { parseQuantity } from 'meltbounds/units';

const findings: readonly Finding[] = checkRegistry(loadFiles([]), { today: '2026-01-01' });
const parts = [reduceTrial, drawPlot, summarise, leastSquares, parseQuantity];
console.log(findings.length, kinds.length, beadArea(0.2, 0.45).toFixed(4), parts.every((part) => typeof part === 'function'));
`;
const wrong = "import { beadArea } from 'meltbounds/physics';\nbeadArea('0.2 mm', 0.45);\n";

/** The oldest compiler that is promised; it comes with the linter of types. */
const oldest = '5.6.';

/** What the right program prints. */
const expected = '0 8 0.0814 true\n';

/**
 * Sentences about what does not work in a CommonJS project that has installed a packed package, for the oldest compiler that is
 * promised and for this project's. `folder` is empty, `root` the project, whose packages stand in for those that npm would install.
 */
export function commonJsFaults(root: string, tarball: string, folder: string): string[] {
  const modules = join(folder, 'node_modules');
  mkdirSync(join(modules, 'meltbounds'), { recursive: true });
  runs('tar', ['-xzf', tarball, '-C', join(modules, 'meltbounds'), '--strip-components=1'], folder);
  for (const name of readdirSync(join(root, 'node_modules'))) {
    if (name.startsWith('.') || name === 'meltbounds' || name === '@types') continue;
    symlinkSync(join(root, 'node_modules', name), join(modules, name), 'junction');
  }
  writeFileSync(join(folder, 'package.json'), '{"type":"commonjs"}\n');
  writeFileSync(join(folder, 'right.ts'), right);
  writeFileSync(join(folder, 'wrong.ts'), wrong);
  const found = compilers(root);
  return [
    ...(found.some(([version]) => version.startsWith(oldest))
      ? []
      : [`TypeScript ${oldest} is not installed.`]),
    ...found.flatMap(([version, tsc]) => faultsWith(version, tsc, folder)),
  ];
}

/** The compiler that comes with the linter of types, and that of the project. */
function compilers(root: string): [version: string, tsc: string][] {
  return ['node_modules/@arethetypeswrong/core/package.json', 'package.json'].map((file) => {
    const from = createRequire(join(root, file));
    const manifest = from.resolve('typescript/package.json');
    const { version } = from(manifest) as { version: string };
    return [version, join(dirname(manifest), 'bin', 'tsc')];
  });
}

function faultsWith(version: string, tsc: string, folder: string): string[] {
  const compile = (file: string) => {
    const options = ['--module', 'nodenext', '--target', 'es2023', '--strict', '--outDir', 'out'];
    return runs(process.execPath, [tsc, ...options, file], folder);
  };
  const compiled = compile('right.ts');
  const ran = runs(process.execPath, [join('out', 'right.js')], folder);
  const refused = compile('wrong.ts');
  const of = `with TypeScript ${version}, a CommonJS project`;
  return [
    ...(compiled === '' ? [] : [`${of} does not compile:\n${compiled}`]),
    ...(ran === expected ? [] : [`${of} prints:\n${ran}`]),
    ...(/error TS2345/.test(refused) ? [] : [`${of} is let pass a text for a number.\n${refused}`]),
  ];
}

function runs(program: string, args: readonly string[], cwd: string): string {
  const { stdout, stderr } = spawnSync(program, args, { cwd, encoding: 'utf8' });
  return `${stdout}${stderr}`;
}
