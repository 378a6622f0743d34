import { strFromU8, unzlibSync } from 'fflate';
import type { Registry } from '../../registry/registry.ts';
import { compactJsonText } from '../../text/json-text.ts';
import { sha256Of } from '../../text/sha256.ts';
import { benchDataPath, benchScripts, commonPartPath, partPath, rootPages, stylePath } from '../address.ts';
import { scriptOf } from '../data/data-scripts.ts';
import { benchScript, benchWorkerScript, offlineScript } from '../generated/bench-scripts.ts';
import { benchPage } from '../pages/bench-page.ts';
import type { SiteFile } from '../site-file.ts';
import { siteStyle } from '../site-style.ts';
import { type BenchSetting, benchData } from './bench-data.ts';
import { commonPart, familyPart, filamentPart, machinePart, type RegistryPart } from './registry-part.ts';

/** What the bench needs of a repository besides its registry. */
export interface BenchOptions {
  readonly setting: BenchSetting;
  /** Whether a profile belongs to the team's own registry, by its path. */
  readonly isOwn: (path: string) => boolean;
}

/** Parts up to this size together, in characters, are kept at hand from the first visit; of larger registries those that were used. */
const mostAtHand = 5_000_000;

/** The bench page with its scripts, and the parts of the registry that it loads. */
export function* benchFiles(registry: Registry, { setting, isOwn }: BenchOptions): Generator<SiteFile> {
  const page: SiteFile[] = [
    benchPage(),
    { path: benchDataPath, text: scriptOf('meltboundsBench', benchData(registry, setting)) },
    { path: benchScripts.page, text: unpackedScript(benchScript) },
    { path: benchScripts.worker, text: unpackedScript(benchWorkerScript) },
  ];
  yield* page;
  const atHand = new Map([...page, { path: stylePath, text: siteStyle }].map(digested));
  let room = mostAtHand;
  for (const [path, part] of parts(registry, isOwn)) {
    const file = { path, text: `${compactJsonText(part)}\n` };
    yield file;
    room -= file.text.length;
    if (room >= 0) atHand.set(...digested(file));
  }
  yield { path: benchScripts.offline, text: offlineFile(atHand) };
}

function* parts(
  registry: Registry,
  isOwn: BenchOptions['isOwn'],
): Generator<readonly [path: string, part: RegistryPart]> {
  yield [commonPartPath, commonPart(registry, isOwn)];
  for (const machine of registry.machine.values())
    yield [partPath('machine', machine.id), machinePart(registry, machine, isOwn)];
  for (const family of registry.polymer.values())
    yield [partPath('polymer', family.id), familyPart(registry, family, isOwn)];
  for (const filament of registry.filament.values())
    yield [partPath('filament', filament.id), filamentPart(registry, filament, isOwn)];
}

function digested({ path, text }: SiteFile): readonly [path: string, digest: string] {
  return [path, sha256Of(text)];
}

/** The script that keeps files at hand, with what it keeps: another version of any of them makes another script. */
function offlineFile(atHand: ReadonlyMap<string, string>): string {
  const version = sha256Of([...atHand].flat().join('\n')).slice(0, 16);
  return `${scriptOf('meltboundsOffline', { version, page: rootPages.bench, files: [...atHand.keys()] })}${unpackedScript(offlineScript)}`;
}

/** A script as it was before it was compressed (RFC 1950, RFC 4648). */
export function unpackedScript(packed: string): string {
  const bytes = Uint8Array.from(atob(packed), (character) => character.charCodeAt(0));
  return strFromU8(unzlibSync(bytes));
}
