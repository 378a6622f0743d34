import { list, type Section, section } from '../text/document.ts';
import { type Amount, amountOf } from '../units/rounded.ts';
import { shown, shownRange } from '../units/wording.ts';
import { newestFirst, type Quirk } from './quirks.ts';

/** `2026-05-07  The nozzle falls 9 K. -> Ladders with the fans off.`: the way round, else the effect, behind the arrow. */
export function formatQuirkLine({ date, what, effect, wayRound }: Quirk): string {
  return `${date}  ${oneLine(what)} -> ${oneLine(wayRound ?? effect)}`;
}

/**
 * A quirk in full, as an item of a list: `2026-05-07, tollwick/steeple, above 55 mm3/s: The nozzle falls 9 K. Ladders read
 * lower. -> Ladders with the fans off.`
 */
export function formatQuirk(quirk: Quirk): string {
  const { of, date, what, effect, wayRound } = quirk;
  const holder = of.kind === 'trial' ? `trial ${of.id}` : of.id;
  const start = [date, holder, ...concernsText(quirk)].join(', ');
  const way = wayRound === null ? '' : ` -> ${oneLine(wayRound)}`;
  return `${start}: ${[what, effect].map(sentence).join(' ')}${way}`;
}

/** The quirks of one or several pairings under a heading, each once and the newest first; no section where there is none. */
export function quirkSections(quirks: readonly Quirk[]): Section[] {
  const items = [...new Set(quirks.toSorted(newestFirst).map(formatQuirk))];
  return items.length === 0 ? [] : [section('Quirks, the newest first', [list(items)])];
}

/** `above 55 mm3/s`, `at 240..260 Cel`: what a quirk is limited to. */
function concernsText({ concerns }: Quirk): string[] {
  const { nozzle = null, aboveFlow = null, nozzleTemperature = null } = concerns ?? {};
  return [
    nozzle === null ? [] : `nozzle ${nozzle}`,
    aboveFlow === null ? [] : `above ${shown(aboveFlow, 'volumeFlow')}`,
    nozzleTemperature === null ? [] : `at ${shownRange(nozzleTemperature, 'temperature')}`,
  ].flat();
}

/** A quirk as JSON for programs holds it. */
interface QuirkFacts extends Omit<Quirk, 'concerns'> {
  readonly concerns: {
    readonly nozzle: string | null;
    readonly aboveFlow: Amount | null;
    readonly nozzleTemperature: { readonly low: Amount; readonly high: Amount } | null;
  } | null;
}

export function quirkFacts({ concerns, ...rest }: Quirk): QuirkFacts {
  if (concerns === null) return { ...rest, concerns };
  const { nozzle, aboveFlow, nozzleTemperature } = concerns;
  return {
    ...rest,
    concerns: {
      nozzle,
      aboveFlow: aboveFlow === null ? null : amountOf(aboveFlow, 'mm3/s'),
      nozzleTemperature:
        nozzleTemperature === null
          ? null
          : {
              low: amountOf(nozzleTemperature.low, 'Cel'),
              high: amountOf(nozzleTemperature.high, 'Cel'),
            },
    },
  };
}

function oneLine(text: string): string {
  return text.trim().replace(/\s+/g, ' ');
}

function sentence(text: string): string {
  const line = oneLine(text);
  return /[.!?]$/.test(line) ? line : `${line}.`;
}
