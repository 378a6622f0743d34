import { fileURLToPath } from 'node:url';
import { strToU8, zlibSync } from 'fflate';
import { type Plugin, rolldown } from 'rolldown';
import { leanWorker } from './lean-worker.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * The scripts of the bench page, bundled for browsers, as a module of the program, so that who writes a site needs no bundler; each
 * compressed, since the package holds the module twice.
 */
export async function benchScriptsModule(): Promise<string> {
  const scripts = {
    benchScript: await bundled('bench-page.ts', []),
    benchWorkerScript: await bundled('bench-worker.ts', [await leanWorker()]),
    offlineScript: await bundled('bench-offline.ts', []),
  };
  const lines = Object.entries(scripts).map(([name, code]) => `export const ${name} = '${packed(code)}';`);
  return `// Generated from src/site/client/bench by \`npm run generate\`; do not edit.\n${lines.join('\n')}\n`;
}

/** The same bytes with every version of Node, whose own compression changes. */
function packed(code: string): string {
  return Buffer.from(zlibSync(strToU8(code), { level: 9 })).toString('base64');
}

async function bundled(file: string, plugins: Plugin[]): Promise<string> {
  const bundle = await rolldown({
    cwd: root,
    input: `src/site/client/bench/${file}`,
    platform: 'browser',
    plugins,
    transform: { target: 'es2022' },
    logLevel: 'warn',
  });
  const { output } = await bundle.generate({ format: 'iife', minify: true });
  await bundle.close();
  return output[0].code.replace(invisible, escaped);
}

/** What nobody sees in an editor; a script means the same by its code. */
const invisible = /(?!\n)[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

function escaped(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
}
