import { bedBound } from '../../knowledge/bed-bound.ts';
import { familiesOf, isFoamed, widest } from '../../knowledge/families.ts';
import { impossibleEnd, nozzleEnvelope, unquestioned } from '../../knowledge/nozzle-envelope.ts';
import type { Filament, Statement } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import type { DegreesCelsius, Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { stating } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** A bench tries settings so far outside of the window (common practice, no source). */
const windowAllowance = 15;
/** In degrees Celsius. */
const coldestRoom = 15;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'A trial is run within the temperature and fan range of its filament.',
  rationale:
    'Tables only use limits inside that range; a temperature far outside is often a typing mistake or the wrong spool.',
  source: `Filament profile, nozzleTemperature, bedTemperature, chamberTemperature; ${windowAllowance} K of allowance are common practice, no source.`,
  example: stating('filament', 'nozzleTemperature', { bad: '215..225 Cel', good: '215..235 Cel' }),
  *check(profile, { registry }) {
    const filament = registry.filament.get(profile.data.filament)?.data;
    if (filament === undefined) return;
    const { nozzleTemperature, bedTemperature, chamberTemperature, dryingTemperature, fan } =
      profile.data.conditions;
    if (nozzleTemperature !== undefined && !isQuestioned(nozzleTemperature, filament, registry))
      yield* outside('nozzleTemperature', nozzleTemperature, saneNozzleWindow(filament, registry), filament);
    yield* outside('bedTemperature', bedTemperature, saneBedWindow(filament, registry), filament);
    yield* outside('chamberTemperature', chamberTemperature, chamberWindow(filament), filament);
    yield* outside('dryingTemperature', dryingTemperature, dryingWindow(filament, registry), filament);
    yield* fanOutside(fan, widestOf(filament.fan), filament);
  },
};

/** What the filament states of its drying, or else what its families are dried at; a bench tries others near it. */
function dryingWindow(filament: Filament, registry: Registry): Range | null {
  const values = (filament.dryingTemperature ?? []).map(({ value }) => value);
  if (values.length === 0) return widest(familiesOf(filament, registry), 'dryingTemperature');
  return { low: Math.min(...values), high: Math.max(...values) };
}

function* outside(
  name: keyof Profile<'trial'>['data']['conditions'],
  value: DegreesCelsius | undefined,
  window: Range | null,
  filament: Filament,
): Generator<Hit> {
  if (value === undefined || window === null) return;
  const sane = { low: window.low - windowAllowance, high: window.high + windowAllowance };
  if (value >= sane.low && value <= sane.high) return;
  yield {
    path: ['conditions', name],
    part: 'value',
    blames: [{ of: { kind: 'filament', id: filament.id }, path: [name] }],
    message: `The trial runs at ${shown(value, 'temperature')}, but ${filament.id} is made for ${shownRange(window, 'temperature')}`,
    found: shown(value, 'temperature'),
    allowed: shownRange(sane, 'temperature'),
    help: 'Check the temperature and the spool; if the ladder was run outside on purpose, say so in its notes.',
  };
}

/** As a fraction. A bench that tries another share of the fan comes near the window; a lost digit does not. */
const fanAllowance = 0.15;

function* fanOutside(fan: number | undefined, window: Range | null, { id }: Filament): Generator<Hit> {
  if (fan === undefined || window === null) return;
  if (fan >= window.low - fanAllowance && fan <= window.high + fanAllowance) return;
  yield {
    path: ['conditions', 'fan'],
    part: 'value',
    blames: [{ of: { kind: 'filament', id }, path: ['fan'] }],
    message: `The trial runs the fan at ${shown(fan, 'ratio')}, but ${id} is made for ${shownRange(window, 'ratio')}`,
    found: shown(fan, 'ratio'),
    allowed: shownRange(window, 'ratio'),
    help: 'Check the fan and the spool; if the trial was run outside on purpose, say so in its notes.',
  };
}

function widestOf(statements: readonly Statement<Range>[] | undefined): Range | null {
  const windows = (statements ?? []).map(({ value }) => value);
  if (windows.length === 0) return null;
  return {
    low: Math.min(...windows.map(({ low }) => low)),
    high: Math.max(...windows.map(({ high }) => high)),
  };
}

/** The widest window that the filament states; null where a slip in it is found by its own rules. */
function saneNozzleWindow(filament: Filament, registry: Registry): Range | null {
  const window = widestOf(filament.nozzleTemperature);
  const envelope = nozzleEnvelope(familiesOf(filament, registry), isFoamed(filament));
  return window === null || impossibleEnd(window, envelope) !== null ? null : window;
}

/** As `saneNozzleWindow`, for the bed. */
function saneBedWindow(filament: Filament, registry: Registry): Range | null {
  const window = widestOf(filament.bedTemperature);
  const bound = bedBound(filament, familiesOf(filament, registry));
  return window === null || (bound !== null && window.high > bound.value) ? null : window;
}

/** A chamber that is colder than the window is what an open door gives, and no slip. */
function chamberWindow(filament: Filament): Range | null {
  const window = widestOf(filament.chamberTemperature);
  return window && { low: Math.min(window.low, coldestRoom), high: window.high };
}

/** Whether the rules on the family already question the temperature. */
function isQuestioned(value: number, filament: Filament, registry: Registry): boolean {
  const envelope = nozzleEnvelope(familiesOf(filament, registry), isFoamed(filament));
  const sane = unquestioned(envelope, filament.fillers !== undefined);
  const outside = sane !== null && (value < sane.low || value > sane.high);
  return outside || impossibleEnd({ low: value, high: value }, envelope) !== null;
}
