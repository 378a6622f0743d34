import { fileURLToPath } from 'node:url';
import { rolldown } from 'rolldown';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The script of the catalogue, bundled for browsers, as a module of the program, so that who writes a site needs no bundler. */
export async function siteScriptModule(): Promise<string> {
  const bundle = await rolldown({
    cwd: root,
    input: 'src/site/client/catalogue.ts',
    platform: 'browser',
    transform: { target: 'es2022' },
    logLevel: 'warn',
  });
  const { output } = await bundle.generate({ format: 'iife', minify: true });
  await bundle.close();
  const [{ code }] = output;
  return `// Generated from src/site/client by \`npm run generate\`; do not edit.\n/** The script of the catalogue. */\nexport const siteScript = ${JSON.stringify(code)};\n`;
}
