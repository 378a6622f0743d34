import { grindingFillers } from '../../knowledge/grinding-fillers.ts';
import { linerLimits } from '../../knowledge/liner-places.ts';
import { conditionsOf, type FittedPairing, takes } from '../../knowledge/pairing.ts';
import { readFillerSymbol } from '../../physics/filler-symbol.ts';
import { highestStated } from '../../registry/stated.ts';
import { chooseStatement } from '../../registry/statement.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import type { MatchReason } from './match-verdict.ts';

/** Fibres and particles bridge bores that are finer, in mm (common practice, no source). */
const finestForFilled = 0.5;

/** What speaks for and against a nozzle with its hot end: diameter, temperature, liner, wear, bore. */
export function nozzleReasons(pairing: FittedPairing): MatchReason[] {
  return [diameter(pairing), ...temperature(pairing), ...wear(pairing), ...bore(pairing)];
}

function diameter({ hotEnd, filament }: FittedPairing): MatchReason {
  const [made, has] = [hotEnd.filamentDiameter, filament.data.diameter].map((value) =>
    shown(value, 'length'),
  );
  if (takes(hotEnd, filament.data.diameter)) {
    return {
      aspect: 'filamentDiameter',
      verdict: 'suits',
      text: `hot end "${hotEnd.id}" takes the ${has} filament`,
    };
  }
  return {
    aspect: 'filamentDiameter',
    verdict: 'unsuitable',
    text: `hot end "${hotEnd.id}" takes filament of ${made}, this one has ${has}`,
  };
}

function temperature(pairing: FittedPairing): MatchReason[] {
  const window = chooseStatement(pairing.filament.data.nozzleTemperature, conditionsOf(pairing));
  if (window === null) return [];
  const { hotEnd } = pairing;
  const limit = highestStated(hotEnd.temperatureLimit);
  const name = `hot end "${hotEnd.id}"`;
  const reasons =
    limit === null
      ? [unknownLimit(name, window.value)]
      : [within(window.value, limit, `${name} goes to ${shown(limit, 'temperature')}`)];
  return hotEnd.liner === 'polymer' ? [...reasons, liner(window.value)] : reasons;
}

function unknownLimit(name: string, window: Range): MatchReason {
  return {
    aspect: 'nozzleTemperature',
    verdict: 'limited',
    text: `the limit of ${name} is not known; the filament needs ${shownRange(window, 'temperature')}`,
  };
}

function within(window: Range, limit: number, what: string): MatchReason {
  const aspect = 'nozzleTemperature';
  const wanted = shownRange(window, 'temperature');
  if (window.low > limit)
    return { aspect, verdict: 'unsuitable', text: `${what}, the filament needs ${wanted}` };
  if (window.high <= limit) return { aspect, verdict: 'suits', text: `${what}, which covers ${wanted}` };
  const left = shownRange({ low: window.low, high: limit }, 'temperature');
  return { aspect, verdict: 'limited', text: `${what}, which leaves ${left} of ${wanted}` };
}

function liner(window: Range): MatchReason {
  const { low, high } = linerLimits;
  if (window.low > low && window.low <= high) {
    return {
      aspect: 'nozzleTemperature',
      verdict: 'limited',
      text: `the filament needs ${shownRange(window, 'temperature')}, near ${shown(high, 'temperature')}, where the polymer liner gives off toxic fumes`,
    };
  }
  return within(window, low, `the polymer liner withstands ${shown(low, 'temperature')}`);
}

function wear({ nozzle, filament }: FittedPairing): MatchReason[] {
  const grinding = grindingFillers(filament.data, nozzle);
  if ((filament.data.fillers ?? []).length === 0) return [];
  const text =
    grinding.length === 0
      ? `nozzle ${nozzle.id} of ${nozzle.material} withstands the fillers`
      : `nozzle ${nozzle.id} of ${nozzle.material} is worn by ${grinding.join(' and ')}`;
  return [{ aspect: 'nozzleMaterial', verdict: grinding.length === 0 ? 'suits' : 'unsuitable', text }];
}

function bore({ nozzle, filament }: FittedPairing): MatchReason[] {
  const symbols = (filament.data.fillers ?? []).map(({ symbol }) => symbol);
  const solid = symbols.filter((symbol) => readFillerSymbol(symbol) !== undefined);
  if (solid.length === 0 || nozzle.diameter >= finestForFilled) return [];
  return [
    {
      aspect: 'nozzleMaterial',
      verdict: 'limited',
      text: `the bore of ${nozzle.id}, ${shown(nozzle.diameter, 'length')}, is narrow for a filament with ${solid.join(' and ')}: bores from ${finestForFilled} mm clog less`,
    },
  ];
}
