import { fileURLToPath } from 'node:url';
import { strToU8, zlibSync } from 'fflate';
import { type Plugin, rolldown } from 'rolldown';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** A module of the program that exports scripts for browsers by their names, each compressed, since the package holds it twice. */
export function scriptsModule(folder: string, scripts: Readonly<Record<string, string>>): string {
  const lines = Object.entries(scripts).map(([name, code]) => `export const ${name} = '${packed(code)}';`);
  return `// Generated from ${folder} by \`npm run generate\`; do not edit.\n${lines.join('\n')}\n`;
}

/** The same bytes with every version of Node, whose own compression changes. */
function packed(code: string): string {
  return Buffer.from(zlibSync(strToU8(code), { level: 9 })).toString('base64');
}

/** A script with all that it imports, bundled for browsers, so that who writes a site needs no bundler. */
export async function browserScript(input: string, plugins: Plugin[] = []): Promise<string> {
  const bundle = await rolldown({
    cwd: root,
    input,
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
