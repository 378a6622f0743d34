import { chmodSync, copyFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { digestFile, digestOfFiles } from '../src/host/program-digest.ts';
import { bundleCli } from './bundle/bundle-cli.ts';
import { bundlePackages } from './bundle/bundle-packages.ts';
import { builtEntrances, writeCommonJsTypes } from './bundle/commonjs-types.ts';
import { pruneBuild } from './bundle/prune-build.ts';

const at = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url));

// The compiler leaves out what it did not compile, and does not mark programs as executable.
copyFileSync(at('src/registry/generated/validators.js'), at('dist/registry/generated/validators.js'));
// The commands are no part of what programs import: they come as one bundle.
for (const path of ['cli.js', 'cli.d.ts', 'host/launch.js', 'host/launch.d.ts', 'commands', 'editor', 'cli'])
  rmSync(at(`dist/${path}`), { recursive: true, force: true });
await bundlePackages(at('dist'));
await writeCommonJsTypes(at('.'));
pruneBuild(at('dist'), builtEntrances(at('.')));
await bundleCli('dist');
chmodSync(at('dist/cli.cjs'), 0o755);
writeFileSync(at(`dist/${digestFile}`), `${digestOfFiles(at('dist'))}\n`);
