import { plainYaml } from '../../src/registry/yaml/plain-yaml.ts';
import { parsedTree } from '../../src/registry/yaml/yaml-document.ts';

/** Texts that the fast reader of YAML read otherwise than the full one, of how many it took on. */
export interface ReaderComparison {
  readonly compared: number;
  /** Those that the fast reader vouched for; it leaves the others to the full one. */
  readonly taken: number;
  readonly different: readonly string[];
}

/** Deepest nesting that the fast reader takes on in a comparison. */
const deepest = 24;

/** Holds what the fast reader of YAML makes of texts against the full one. */
export function compareReaders(texts: Iterable<string>): ReaderComparison {
  let compared = 0;
  let taken = 0;
  const different: string[] = [];
  for (const text of texts) {
    compared += 1;
    const plain = plainYaml(text, deepest);
    if (plain === null) continue;
    taken += 1;
    if (asText(plain.value) !== fullText(text)) different.push(text);
  }
  return { compared, taken, different };
}

function fullText(text: string): string | null {
  const tree = parsedTree(text);
  return tree.errors.length + tree.warnings.length > 0 ? null : asText(tree.toJS({ maxAliasCount: 0 }));
}

/** JSON that tells apart what JSON cannot: endless numbers and the sign of zero. */
function asText(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown) =>
    typeof inner === 'number' && (!Number.isFinite(inner) || Object.is(inner, -0))
      ? { number: Object.is(inner, -0) ? '-0' : String(inner) }
      : inner,
  );
}
