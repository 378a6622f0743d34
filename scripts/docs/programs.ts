import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder, readDocument } from './documents.ts';

/** What a program printed, and how it ended. */
export interface ProgramRun {
  readonly printed: string;
  readonly status: number | null;
}

/** The sources of this project as the package that programs import; its names are those of package.json. */
export function installPackage(folder: string): void {
  const { exports } = JSON.parse(readDocument('package.json')) as {
    exports: Record<string, string | { readonly default: string }>;
  };
  const entrances = Object.entries(exports).flatMap(([name, target]) =>
    typeof target === 'string' ? [[name, target]] : [[name, sourceOf(target.default)]],
  );
  const content = { name: 'meltbounds', type: 'module', exports: Object.fromEntries(entrances) };
  const place = join(folder, 'node_modules', 'meltbounds');
  mkdirSync(place, { recursive: true });
  writeFileSync(join(place, 'package.json'), JSON.stringify(content));
  for (const part of ['src', 'schema']) symlinkSync(join(projectFolder, part), join(place, part), 'junction');
}

/** `./dist/api/bench.js` → `./src/api/bench.ts` */
function sourceOf(built: string): string {
  return built.replace('./dist/', './src/').replace(/\.js$/, '.ts');
}

/** Runs a program in TypeScript in a folder that has the package. */
export function runProgram(text: string, folder: string): ProgramRun {
  const file = join(folder, 'program.mts');
  writeFileSync(file, text);
  const args = ['--import', import.meta.resolve('tsx'), file];
  const { stdout, stderr, status } = spawnSync(process.execPath, args, { cwd: folder, encoding: 'utf8' });
  rmSync(file);
  return { printed: `${stdout}${stderr}`, status };
}

/** What the compiler says against programs, by their names, all of them in one run and as strict as the project is. */
export function compilePrograms(programs: ReadonlyMap<string, string>, folder: string): string {
  installPackage(folder);
  for (const [name, text] of programs) writeFileSync(join(folder, `${name}.mts`), text);
  const config = {
    extends: join(projectFolder, 'tsconfig.json'),
    compilerOptions: { rootDir: '/', typeRoots: [join(projectFolder, 'node_modules', '@types')] },
    include: ['*.mts'],
  };
  writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(config));
  const tsc = join(projectFolder, 'node_modules', 'typescript', 'bin', 'tsc');
  const { stdout, stderr } = spawnSync(process.execPath, [tsc, '-p', folder], {
    cwd: folder,
    encoding: 'utf8',
  });
  return `${stdout}${stderr}`;
}
