const multiplicationSigns = ['·', '⋅', '.', '*'];

/** `W/m/K` as printed with one stroke: `W/(m·K)`. UCUM reads strictly left to right, print uses brackets. */
function withOneStroke(code: string): string[] {
  const [numerator, ...denominators] = code.split('/');
  if (numerator === undefined || denominators.length < 2) return [];
  return multiplicationSigns.map((sign) => `${numerator}/(${denominators.join(sign)})`);
}

/** Heat per kelvin is often printed per degree Celsius; as a difference the two are one (BIPM SI Brochure, 2.3.1). */
function perDegree(code: string): string[] {
  return code.endsWith('/K') ? [`${code.slice(0, -1)}°C`] : [];
}

function raised(code: string): string {
  return code.replace(/(?<=[a-z])[23](?![0-9])/g, (digit) => (digit === '2' ? '²' : '³'));
}

/**
 * The spellings of a code that people type or paste from print: raised exponents, the Greek letter of micro
 * (U+00B5 and U+03BC), one stroke with a bracket, degree signs. The code itself is not among them.
 */
export function printSymbols(code: string): readonly string[] {
  const degrees = [code, ...perDegree(code)];
  const spellings = degrees.flatMap((spelling) => [spelling, ...withOneStroke(spelling)]);
  const micro = code.startsWith('um')
    ? spellings.flatMap((s) => [`\u00b5${s.slice(1)}`, `\u03bc${s.slice(1)}`])
    : [];
  const all = [...spellings, ...micro].flatMap((spelling) => [spelling, raised(spelling)]);
  return [...new Set(all)].filter((spelling) => spelling !== code);
}

/** How print writes a UCUM code where it differs by more than exponents and strokes. */
const wholeCodes: Readonly<Record<string, string>> = {
  Cel: '°C',
  deg: '°',
  'dB[SPL]{A}': 'dB(A)',
  'dB[SPL]': 'dB(SPL)',
  '{count}': '',
  '1': '',
};

/** The same for the parts of a code; standard gravity is printed with an index, since g is the gram. */
const codeParts: readonly (readonly [part: RegExp, printed: string])[] = [
  [/\[degF\]/g, '°F'],
  [/\[sin_i\]/g, 'in2'],
  [/\[cin_i\]/g, 'in3'],
  [/\[cft_i\]/g, 'ft3'],
  [/\[ppth\]/g, '‰'],
  [/\[g\]/g, 'gₙ'],
  [/\[([a-z]+?)(?:_i|_av)?\]/g, '$1'],
  [/^um/, '\u00b5m'],
];

/** The unit of a UCUM code as print writes it: `mm³/s` for `mm3/s`, `J/(g·K)` for `J/g/K`, nothing for a count. */
export function printedUnit(code: string): string {
  const [oneStroke = code] = withOneStroke(code);
  return (
    wholeCodes[code] ??
    raised(codeParts.reduce((text, [part, printed]) => text.replace(part, printed), oneStroke))
  );
}
