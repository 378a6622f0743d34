import { familiesOf } from '../../knowledge/families.ts';
import type { Filament } from '../../registry/generated/documents.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import type { Profile } from '../../registry/profile.ts';
import { oncePerRegistry, type Registry } from '../../registry/registry.ts';
import { familyMisfits, type Misfit } from './family-misfits.ts';

/** Figures that sheets give of a filament, and how much it says that two have the same (common practice, no source). */
const figures = [
  { key: 'nozzleTemperature', words: 'nozzle temperature', weight: 1 },
  { key: 'bedTemperature', words: 'bed temperature', weight: 1 },
  { key: 'softening', words: 'softening', weight: 1 },
  { key: 'dryingTemperature', words: 'drying temperature', weight: 1 },
  { key: 'density', words: 'density', weight: 1 },
  { key: 'chamberTemperature', words: 'chamber temperature', weight: 0.5 },
  { key: 'fan', words: 'fan', weight: 0.5 },
  { key: 'dryingTime', words: 'drying time', weight: 0.5 },
  { key: 'shortestLayerTime', words: 'shortest layer time', weight: 0.5 },
] as const;

type Figure = (typeof figures)[number];

/** What a filament has in common with one of another polymer. */
export interface Shared {
  readonly other: Profile<'filament'>;
  readonly keys: readonly Figure[];
  readonly weight: number;
  /** How far the shared figures lie outside of the family, in allowances for grades; of its own family for the other one. */
  readonly misfit: number;
  readonly misfitOfOther: number;
}

interface StatedFigure {
  readonly figure: Figure;
  readonly text: string;
  readonly filament: Profile<'filament'>;
}

/** The filaments of other polymers that share figures with one, each with what they share. */
export function sharedWithOtherPolymer(filament: Profile<'filament'>, registry: Registry): Shared[] {
  const byText = figuresByText(registry);
  const found = figuresOf(filament).flatMap(({ text }) => {
    const stating = byText.get(text) ?? [];
    if (stating.length > mostStating) return [];
    return stating.filter(({ filament: { data } }) => data.polymer !== filament.data.polymer);
  });
  return [...groupedBy(found, ({ filament: { id } }) => id).values()].flatMap((shared) => {
    const [first] = shared;
    if (first === undefined || shared.length < 2) return [];
    const other = first.filament;
    const keys = figures.filter((figure) => shared.some((each) => each.figure === figure));
    return [
      {
        other,
        keys,
        weight: keys.reduce((sum, { weight }) => sum + weight, 0),
        misfit: misfitOf(keys, filament.data, registry),
        misfitOfOther: misfitOf(keys, other.data, registry),
      },
    ];
  });
}

/** A figure that more kinds of filament state is a round one, and comparing each with each would take hours. */
const mostStating = 100;

/** By what they say; of filaments with the same figures throughout, the first stands for all. */
const figuresByText = oncePerRegistry((registry) => {
  const alike = groupedBy([...registry.filament.values()], allFiguresOf);
  const first = [...alike.values()].flatMap(([one]) => (one === undefined ? [] : [one]));
  return groupedBy(first.flatMap(figuresOf), ({ text }) => text);
});

function allFiguresOf({ data }: Profile<'filament'>): string {
  const values = figures.map(({ key }) => (data[key] ?? []).map(({ value, basis }) => [value, basis]));
  return JSON.stringify([data.polymer, data.designation, values]);
}

/** What is not measured on a bench of one's own, since that is nobody's copy. */
function figuresOf(filament: Profile<'filament'>): StatedFigure[] {
  return figures.flatMap((figure) => {
    const stated = (filament.data[figure.key] ?? []).filter(({ basis }) => basis !== 'measured');
    const texts = new Set(stated.map(({ value }) => `${figure.key} ${JSON.stringify(value)}`));
    return [...texts].map((text) => ({ figure, text, filament }));
  });
}

function misfitOf(keys: readonly Figure[], filament: Filament, registry: Registry): number {
  return misfitsByFilament(registry)(filament)
    .filter(({ key }) => keys.some((figure) => figure.key === key))
    .reduce((sum, { off }) => sum + Math.min(2, off), 0);
}

const misfitsByFilament = oncePerRegistry((registry) => {
  const known = new Map<Filament, readonly Misfit[]>();
  return (filament: Filament): readonly Misfit[] => {
    const before = known.get(filament);
    if (before !== undefined) return before;
    const [family, ...others] = familiesOf(filament, registry);
    const found = family === undefined || others.length > 0 ? [] : familyMisfits(filament, family);
    known.set(filament, found);
    return found;
  };
});
