import { distance } from 'fastest-levenshtein';
import type { Dimension } from './dimension.ts';
import { type Unit, units, unitsOf } from './unit-table.ts';

const longestUnitText = 24;

/** Words and letters that people write for the symbols of the trade, in lower case. */
const forgetful: ReadonlyMap<string, string> = new Map(
  Object.entries({
    s: 'sec secs second seconds',
    min: 'mins minute minutes',
    h: 'hr hrs hour hours',
    d: 'day days',
    cel: 'c degc deg_c celsius centigrade degreec degreesc degreecelsius degreescelsius',
    '[degf]': 'f degf deg_f fahrenheit degreef degreesf degreefahrenheit degreesfahrenheit',
    k: 'kelvin kelvins degk °k',
    mm: 'millimeter millimeters millimetre millimetres',
    cm: 'centimeter centimeters centimetre centimetres',
    m: 'meter meters metre metres',
    um: 'micron microns micrometer micrometre',
    '[in_i]': 'inch inches " ″',
    '[ft_i]': "foot feet '",
    cm3: 'cc ccm',
    ml: 'milliliter millilitre',
    l: 'liter liters litre litres',
    g: 'gram grams gramme grammes gr',
    kg: 'kilogram kilograms kilo kilos kgs',
    '[lb_av]': 'lbs pound pounds',
    '[oz_av]': 'ounce ounces',
    '%': 'percent pct',
    '1': 'fraction',
    deg: 'degree degrees',
    rad: 'radian radians',
    w: 'watt watts',
    n: 'newton newtons',
    hz: 'hertz',
    j: 'joule joules',
    '{count}': 'pcs piece pieces x times',
    'dB[SPL]{A}': 'db db-a db_a decibel decibels',
    eur: 'euro euros',
    usd: '$ us$ dollar dollars',
    jpy: 'yen ¥',
    gbp: 'pound_sterling quid',
  }).flatMap(([symbol, words]) => words.split(' ').map((word) => [word, symbol.toLowerCase()] as const)),
);

function plain(text: string): string {
  return text
    .replace(/[º˚]/g, '°')
    .normalize('NFKC')
    .toLowerCase()
    .replaceAll('μ', 'u')
    .replace(/\bper\b/g, '/')
    .replace(/\s|\^|\*\*/g, '');
}

/** Lower case, without raised digits, carets and spaces, `per` and everyday words replaced by symbols. */
function simplified(text: string): string {
  const bare = plain(text);
  const whole = forgetful.get(bare);
  if (whole !== undefined) return whole;
  return bare
    .split('/')
    .map((part) => forgetful.get(part) ?? inParts(part))
    .join('/');
}

/** `sec2` → `s2`: the exponent stays when the word goes. */
function inParts(part: string): string {
  const symbol = forgetful.get(part.replace(/[23]$/, ''));
  return symbol === undefined ? part : symbol + part.slice(-1);
}

const known = new Map<Unit, readonly string[]>();

/** The spellings of a unit, simplified once: a hostile file holds tens of thousands of units that nobody knows. */
function spellings(unit: Unit): readonly string[] {
  const before = known.get(unit);
  if (before !== undefined) return before;
  const simple = [unit.code, ...unit.aliases].map(simplified);
  known.set(unit, simple);
  return simple;
}

function nearest(wanted: string, candidates: readonly Unit[]): Unit | undefined {
  const same = candidates.find((unit) => spellings(unit).includes(wanted));
  if (same !== undefined) return same;
  const tolerated = Math.floor(wanted.length / 3);
  let best: { readonly unit: Unit; readonly edits: number } | undefined;
  for (const unit of candidates) {
    const edits = Math.min(...spellings(unit).map((each) => distance(each, wanted)));
    if (edits <= tolerated && (best === undefined || edits < best.edits)) best = { unit, edits };
  }
  return best?.unit;
}

/**
 * The unit that a misspelt one probably meant: first among the units of the asked dimension, then among all.
 * Nothing comes near a text longer than 24 characters.
 */
export function suggestUnit(written: string, dimension: Dimension): Unit | undefined {
  if (written === '' || written.length > longestUnitText) return undefined;
  const wanted = simplified(written);
  return nearest(wanted, unitsOf(dimension)) ?? nearest(wanted, units);
}
