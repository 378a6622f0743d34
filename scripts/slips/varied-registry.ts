import { type AdoptingProfile, adoptingKind, adoptLimits } from '../../src/bench/adopt/adopt-limit.ts';
import { reduceTrial } from '../../src/bench/reduce-trial.ts';
import { shapes } from '../../src/registry/generated/shapes.ts';
import { parsingChanges } from '../../src/registry/load-files.ts';
import type { AnyProfile, Profile } from '../../src/registry/profile.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { leavesOf } from '../../src/registry/shape.ts';
import { statementsOf } from '../../src/registry/statement.ts';
import { type RandomSource, randomSource } from '../../src/statistics/random.ts';
import { loadTexts, openRegistry, withEdits } from './planted-registry.ts';
import { measuredColumns } from './reading-slips.ts';
import { rangeAt, type Texts } from './slip.ts';
import { withoutLimits } from './with-adoption.ts';
import { plainNumber } from './written-quantity.ts';
import { writtenReadings } from './written-readings.ts';

/** More rounds than it takes: each puts back what a check does not accept. */
const mostRounds = 12;

/**
 * A registry with the machines and filaments of another one under figures that nobody has looked at: what sheets claim moves by some
 * 6 %, temperatures by some degrees, readings by their scatter, and the limits follow from them. What checking would
 * not accept so is left as it was, so that the result is in order.
 */
export function variedRegistry(texts: Texts, seed: string, today: string): Texts {
  const base = openRegistry('base', texts, today);
  const varied = new Map(texts);
  for (const profile of base.registry.profiles) {
    const random = randomSource(`varied ${seed} ${profile.source.relativePath}`);
    for (const [path, text] of variedTexts(profile, random)) varied.set(path, text);
  }
  const open = (state: Texts) => openRegistry('varied', state, today);
  for (let round = 0; round < mostRounds; round++) {
    const adopted = withNewLimits(varied);
    const found = open(adopted).findings;
    if (found.length === 0) return adopted;
    const files = new Set(
      found.flatMap(({ file, message }) => [file, ...filesNamed(message, base.registry)]),
    );
    for (const file of files) putBack(file, varied, texts);
  }
  throw new Error(`no varied registry in order after ${mostRounds} rounds with the seed "${seed}"`);
}

/** The files of whatever a message names by its id. */
function filesNamed(message: string, { profiles }: Registry): string[] {
  const named = profiles.filter(({ id }) => message.includes(id) && /[/-]/.test(id));
  return named.map(({ source }) => source.relativePath);
}

function putBack(file: string, varied: Map<string, string>, texts: Texts): void {
  for (const path of [file, file.replace(/\.yaml$/, '.csv'), file.replace(/\.csv$/, '.yaml')]) {
    const text = texts.get(path);
    if (text !== undefined) varied.set(path, text);
  }
}

function variedTexts(profile: AnyProfile, random: RandomSource): (readonly [path: string, text: string])[] {
  const { relativePath, text } = profile.source;
  if (profile.kind === 'trial') return variedReadings(profile, random);
  if (profile.kind !== 'machine' && profile.kind !== 'filament') return [];
  const sheetValues = [...statementsOf(profile)].filter(
    ({ statement: { basis } }) => basis === 'claimed' || basis === 'assumed',
  );
  const places = [
    ...sheetValues.map(({ path }) => [...path, 'value']),
    ...leavesOf('quantity', shapes[profile.kind], profile.written)
      .map(({ path }) => path)
      .filter(([root]) => root === 'envelope' || root === 'spool'),
  ];
  const changed = places
    .flatMap((path) => rangeAt(profile, path) ?? [])
    .flatMap((_, index, all) => (index % 2 === 0 ? [[all[index] ?? 0, all[index + 1] ?? 0] as const] : []))
    .sort((a, b) => b[0] - a[0])
    .reduce(
      (now, [start, end]) => now.slice(0, start) + moved(now.slice(start, end), random) + now.slice(end),
      text,
    );
  return [[relativePath, changed]];
}

/** A quantity some way off: temperatures by a few degrees, both ends of a range alike, all else by a share. */
function moved(quantity: string, random: RandomSource): string {
  const degrees = Math.round(2.5 * random.normal());
  // Densities of a family lie close together.
  const factor = Math.exp((/ g\/cm3$/.test(quantity) ? 0.01 : 0.06) * random.normal());
  return quantity.replaceAll(/\d+(?:\.\d+)?/g, (digits) => {
    if (/ Cel$/.test(quantity)) return plainNumber(Number(digits) + degrees);
    if (/%|dB/.test(quantity) || Number(digits) === 0) return digits;
    const decimals = digits.split('.')[1]?.length ?? 0;
    return decimals === 0 && Number(digits) < 20 ? digits : (Number(digits) * factor).toFixed(decimals);
  });
}

/** The readings of a run on another day: all by one share, and each by some steps of its last digit. */
function variedReadings(trial: Profile<'trial'>, random: RandomSource): (readonly [string, string])[] {
  const readings = writtenReadings(trial);
  if (readings === null) return [];
  const share = 1 + 0.002 * random.normal();
  const rows = readings.rows.map((row) =>
    row.map((cell, column) => {
      if (!measuredColumns.test(readings.columns[column] ?? '')) return cell;
      const decimals = cell.split('.')[1]?.length ?? 0;
      return (Number(cell) * share + 1.5 * random.normal() * 10 ** -decimals).toFixed(decimals);
    }),
  );
  return [[readings.file, readings.withRows(rows)]];
}

/** Every limit that rests on a trial of the registry, brought up to date with its readings. */
function withNewLimits(texts: Texts): Texts {
  const parse = parsingChanges();
  const load = (state: Texts) => loadTexts(state, parse).registry;
  const { trial: trials } = load(texts);
  return [...trials.values()].reduce((now, trial) => withNewLimit(now, trial, load), texts);
}

/** The same for one trial; another profile that states its limit besides loses that statement. */
function withNewLimit(texts: Texts, trial: Profile<'trial'>, load: (state: Texts) => Registry): Texts {
  const present = load(texts);
  const reduction = reduceTrial(present, trial.id);
  const kind = reduction.ok ? adoptingKind(reduction.value) : null;
  const profile = kind === null ? null : restingProfile(trial, present[kind]);
  if (!reduction.ok || kind === null || profile === null) return texts;
  const { relativePath, text } = profile.source;
  const others = withEdits(texts, withoutLimits(new Map(), trial.id, present));
  const undigested = new Map([...others, [relativePath, withoutDigest(text, trial.id)]]);
  const resting = load(undigested)[kind].get(profile.id);
  const adopted = resting === undefined ? null : adoptLimits(resting, trial, reduction.value);
  return new Map([...others, [relativePath, adopted?.ok ? adopted.value : text]]);
}

/** A statement whose digest is taken out is adopted anew, as after a look at the bench sheet. */
function withoutDigest(text: string, trial: string): string {
  return text.replaceAll(new RegExp(`(evidence: ${trial})\\n +readings: [0-9a-f]+`, 'g'), '$1');
}

/** The profile that states a limit of a trial already. */
function restingProfile(
  { id, data }: Profile<'trial'>,
  profiles: ReadonlyMap<string, AdoptingProfile>,
): AdoptingProfile | null {
  const both = [profiles.get(data.filament), profiles.get(data.machine ?? '')];
  const rests = both.find((profile) => profile?.source.text.includes(`evidence: ${id}\n`));
  return rests ?? null;
}
