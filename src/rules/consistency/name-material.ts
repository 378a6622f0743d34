import { type FillerMaterial, fillerMaterials, readFillerSymbol } from '../../physics/filler-symbol.ts';
import { parsePlasticsDesignation } from '../../physics/plastics-designation.ts';
import type { Filament } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import type { Registry } from '../../registry/registry.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Words in names that promise a filler, and the materials that keep the promise. */
const promises: readonly { readonly word: RegExp; readonly materials: readonly FillerMaterial[] }[] = [
  { word: /\bcarbon\b|\bCF\d*\b/i, materials: ['C'] },
  { word: /\bglass[ -]?(?:fib\w+|filled|reinforced)?\b|\bGF\d*\b/i, materials: ['G'] },
  { word: /\bwood\b/i, materials: ['W', 'L', 'N'] },
  { word: /\baramid\b/i, materials: ['A'] },
];

const colour =
  'black|white|gr[ae]y|brown|red|orange|yellow|green|blue|violet|purple|pink|beige|ivory|gold|silver|clear|transparent|natural';
/** What names say besides the material: a colour, a look, and after `for` what the filament is meant for. */
const besides = [
  /\b(?:acrylic|amber|blue|bottle|clear|crystal|frosted|green|milk|prop|sea|smoked|stained|window) glass\b/gi,
  new RegExp(`\\b[a-z]+[ -](?:${colour})\\b`, 'gi'),
  /\b[a-z]+[ -](?:look|like|effect|style|finish|imitation|free|tones?|colou?r(?:ed|s)?)\b/gi,
  /\b(?:for|instead of|replaces|in place of)\b.*/gi,
];
/** Names of supports say what they support. */
const supportWords = /\b(?:supports?|breakaway|soluble|interface|release)\b/i;

/** Trade writings of polymer symbols, as names use them. */
const tradeWritings: Readonly<Record<string, string>> = { PETG: 'PET-G', HIPS: 'PS-HI' };

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['filament'],
  severity: 'warning',
  statement: 'A filament states the filler or the polymer that its name mentions.',
  rationale: 'A copied profile keeps whatever nobody changed: polymer, fillers, density.',
  source: 'Common practice, no source: names of products name polymer and reinforcement.',
  example: {
    kind: 'filament',
    bad: 'name: Clover PETG Carbon',
    good: 'name: Clover PETG Carbon Black',
  },
  *check(profile, { registry }) {
    const fault = missingFiller(profile.data) ?? otherPolymer(profile.data, registry);
    if (fault !== null) yield fault;
  },
};

function missingFiller({ name, fillers = [] }: Filament): Hit | null {
  const held = fillers.map(({ symbol }) => readFillerSymbol(symbol)?.material);
  const said = besides.reduce((text, phrase) => text.replaceAll(phrase, ' '), name);
  const broken = promises.find(
    ({ word, materials }) => word.test(said) && !materials.some((material) => held.includes(material)),
  );
  const [material] = broken?.materials ?? [];
  if (material === undefined) return null;
  return {
    path: ['name'],
    part: 'value',
    message: `The name "${name}" mentions ${fillerMaterials[material]}, but the profile states no such filler`,
    found: name,
    allowed: `a name without ${fillerMaterials[material]}, or a profile with it`,
    help: 'State the filler with its mass fraction under `fillers` and in the designation; acknowledge the finding if the name only describes the look.',
  };
}

function otherPolymer({ name, polymer, designation }: Filament, registry: Registry): Hit | null {
  if (supportWords.test(name)) return null;
  const [said = ''] = name.split(/\b(?:for|instead of|replaces|in place of)\b/i);
  const words = said.split(/[^A-Za-z0-9-]+/).map((word) => tradeWritings[word] ?? word);
  const named = words.filter((word) => registry.polymer.has(word));
  const parsed = parsePlasticsDesignation(designation);
  const own = [polymer, ...(parsed.ok ? parsed.value.polymers : [])];
  const [other] = named;
  if (other === undefined || named.some((symbol) => own.includes(symbol))) return null;
  return {
    path: ['name'],
    part: 'value',
    message: `The name "${name}" mentions ${other}, but the profile states ${polymer}`,
    found: name,
    allowed: `a name that mentions ${polymer}, or no family`,
    help: 'Correct the polymer, its designation and the values that go with it, or the name.',
  };
}
