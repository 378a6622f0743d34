import { readFillerSymbol } from '../../physics/filler-symbol.ts';
import { highestStated } from '../../registry/stated.ts';
import { chooseStatement } from '../../registry/statement.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { grindingFillers } from '../grinding-fillers.ts';
import { linerLimits } from '../liner-places.ts';
import { conditionsOf, type FittedPairing, takes } from '../pairing.ts';
import type { SuitabilityReason, WarningCode } from './suitability.ts';

/** Fibres and particles bridge bores that are finer, in mm (common practice, no source). */
const finestForFilled = 0.5;

/** What speaks for and against a nozzle with its hot end: diameter, temperature, liner, wear, bore. */
export function nozzleReasons(pairing: FittedPairing): SuitabilityReason[] {
  return [diameter(pairing), ...temperature(pairing), ...wear(pairing), ...bore(pairing)];
}

function diameter({ hotEnd, filament }: FittedPairing): SuitabilityReason {
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
    warning: 'otherDiameter',
    text: `hot end "${hotEnd.id}" takes filament of ${made}, this one has ${has}`,
  };
}

function temperature(pairing: FittedPairing): SuitabilityReason[] {
  const window = chooseStatement(pairing.filament.data.nozzleTemperature, conditionsOf(pairing));
  if (window === null) return [];
  const { hotEnd } = pairing;
  const limit = highestStated(hotEnd.temperatureLimit);
  const name = `hot end "${hotEnd.id}"`;
  const reasons =
    limit === null
      ? [unknownLimit(name, window.value)]
      : [within(window.value, limit, 'hotEndTooCold', `${name} goes to ${shown(limit, 'temperature')}`)];
  return hotEnd.liner === 'polymer' ? [...reasons, liner(window.value)] : reasons;
}

function unknownLimit(name: string, window: Range): SuitabilityReason {
  return {
    aspect: 'nozzleTemperature',
    verdict: 'limited',
    warning: 'hotEndLimitUnknown',
    text: `the limit of ${name} is not known; the filament needs ${shownRange(window, 'temperature')}`,
  };
}

function within(window: Range, limit: number, warning: WarningCode, what: string): SuitabilityReason {
  const aspect = 'nozzleTemperature';
  const wanted = shownRange(window, 'temperature');
  if (window.low > limit)
    return { aspect, verdict: 'unsuitable', warning, text: `${what}, the filament needs ${wanted}` };
  if (window.high <= limit) return { aspect, verdict: 'suits', text: `${what}, which covers ${wanted}` };
  const left = shownRange({ low: window.low, high: limit }, 'temperature');
  return { aspect, verdict: 'limited', warning, text: `${what}, which leaves ${left} of ${wanted}` };
}

function liner(window: Range): SuitabilityReason {
  const { low, high } = linerLimits;
  if (window.low > low && window.low <= high) {
    return {
      aspect: 'nozzleTemperature',
      verdict: 'limited',
      warning: 'linerTooHot',
      text: `the filament needs ${shownRange(window, 'temperature')}, near ${shown(high, 'temperature')}, where the polymer liner gives off toxic fumes`,
    };
  }
  return within(window, low, 'linerTooHot', `the polymer liner withstands ${shown(low, 'temperature')}`);
}

function wear({ nozzle, filament }: FittedPairing): SuitabilityReason[] {
  const grinding = grindingFillers(filament.data, nozzle);
  if ((filament.data.fillers ?? []).length === 0) return [];
  const aspect = 'nozzleMaterial';
  const name = `nozzle ${nozzle.id} of ${nozzle.material}`;
  if (grinding.length === 0) return [{ aspect, verdict: 'suits', text: `${name} withstands the fillers` }];
  const text = `${name} is worn by ${grinding.join(' and ')}`;
  return [{ aspect, verdict: 'unsuitable', warning: 'nozzleWears', text }];
}

function bore({ nozzle, filament }: FittedPairing): SuitabilityReason[] {
  const symbols = (filament.data.fillers ?? []).map(({ symbol }) => symbol);
  const solid = symbols.filter((symbol) => readFillerSymbol(symbol) !== undefined);
  if (solid.length === 0 || nozzle.diameter >= finestForFilled) return [];
  return [
    {
      aspect: 'nozzleMaterial',
      verdict: 'limited',
      warning: 'boreTooFine',
      text: `the bore of ${nozzle.id}, ${shown(nozzle.diameter, 'length')}, is narrow for a filament with ${solid.join(' and ')}: bores from ${finestForFilled} mm clog less`,
    },
  ];
}
