/** What a number is off by if a digit or a unit of it slipped: powers of ten, minutes for seconds, inches for millimetres. */
const slipFactors = [10, 100, 1000, 60, 25.4];

/** Numbers that may have been meant by one that is wrong: with the digits, the decimal point or the unit of a slip put right. */
function meantFigures(written: number): number[] {
  const scaled = slipFactors.flatMap((factor) => [written * factor, written / factor]);
  return [...scaled, ...withTwoDigitsExchanged(written)];
}

/** The number with two neighbouring digits exchanged, wherever they differ. */
function withTwoDigitsExchanged(written: number): number[] {
  const text = String(Number(written.toPrecision(6)));
  const places = [...text].keys();
  return [...places].flatMap((place) => {
    const [one = '', other = ''] = [text[place], text[place + 1]];
    if (!/^\d\d$/.test(one + other) || one === other) return [];
    return [Number(text.slice(0, place) + other + one + text.slice(place + 2))];
  });
}

/** One of several figures, and what was meant by it. */
interface MeantFigure<Key> {
  readonly key: Key;
  readonly meant: number;
}

/**
 * The only one of several figures by whose slip all is explained, and what it was meant to be. `misfit` tells how far what
 * follows from another number in a figure's place is from what was read, 0 for not at all; null where nothing follows.
 */
export function meantFigure<Key>(
  figures: ReadonlyMap<Key, number>,
  misfit: (key: Key, number: number) => number | null,
  within: number,
): MeantFigure<Key> | null {
  const fitting = [...figures].flatMap(([key, written]) => {
    const [best] = meantFigures(written)
      .map((meant) => ({ key, meant, off: misfit(key, meant) ?? Number.POSITIVE_INFINITY }))
      .sort((one, other) => one.off - other.off);
    return best !== undefined && best.off <= within ? [best] : [];
  });
  const [only, ...others] = fitting;
  return only === undefined || others.length > 0 ? null : { key: only.key, meant: only.meant };
}
