import { methodOf } from '../../bench/methods.ts';
import { findFittedPairing } from '../../knowledge/pairing.ts';
import { trialsOfPairing } from '../../knowledge/trial-index.ts';
import { resultTexts } from '../../report/reduction/reduction-document.ts';
import { wordsOf } from '../../text/words.ts';
import { inPrint } from '../../units/in-print.ts';
import { shown } from '../../units/wording.ts';
import { profilePage } from '../address.ts';
import type { RunAsked } from './draft.ts';
import type { BenchSession } from './session.ts';

/** A run of a pairing that the registry holds. */
export interface MeasuredRun {
  readonly trial: string;
  readonly page: string;
  readonly date: string;
  readonly isSimulated: boolean;
  readonly method: string;
  /** The nozzle temperature in words; empty where it had none. */
  readonly temperature: string;
  /** What it found, in words. */
  readonly results: readonly string[];
}

/** What was measured already for a machine, a nozzle and a filament, the newest first. */
export function measuredRuns(
  session: BenchSession,
  asked: Pick<RunAsked, 'machine' | 'nozzle' | 'filament'>,
): MeasuredRun[] {
  const { registry } = session.withFiles([]);
  const { machine, filament, nozzle } = asked;
  const pairing = findFittedPairing(
    registry,
    { machine, filament, ...(nozzle !== null && { nozzle }) },
    { anyNozzle: true },
  );
  if (!pairing.ok) return [];
  return trialsOfPairing(registry, pairing.value)
    .map(({ id, data }) => {
      const { nozzleTemperature } = data.conditions;
      const { results, openWords } = methodOf(data.method);
      const reduced = session.reduceKnown(id);
      const texts = reduced.ok
        ? reduced.value.results.map((result) => resultTexts(result, results[result.quantity], openWords))
        : [];
      return {
        trial: id,
        page: profilePage('trial', id),
        date: data.date,
        isSimulated: data.origin === 'simulated',
        method: wordsOf(data.method),
        temperature: nozzleTemperature === undefined ? '' : inPrint(shown(nozzleTemperature, 'temperature')),
        results: texts.map(({ name, value, interval }) =>
          inPrint(`${name} ${value}${interval === '' ? '' : `, ${interval}`}`),
        ),
      };
    })
    .sort((one, other) => (one.date < other.date ? 1 : one.date > other.date ? -1 : 0));
}
