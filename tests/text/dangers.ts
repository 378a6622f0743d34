/**
 * What in an output would steer a terminal, hide from the eye, or be taken for a command by the runner of a build. Written
 * independently of the printers: by code points, not by classes of characters.
 */
export function dangersIn(output: string, allows: { readonly commands?: boolean } = {}): string[] {
  const found: string[] = [];
  output.split('\n').forEach((line, index) => {
    const whole = line.endsWith('\r') ? line.slice(0, -1) : line;
    for (const character of whole) {
      const code = character.codePointAt(0) ?? 0;
      if (isDangerous(code))
        found.push(`line ${index + 1}: U+${code.toString(16)} in ${JSON.stringify(line)}`);
    }
    if (allows.commands !== true && whole.trimStart().startsWith('::'))
      found.push(`line ${index + 1}: command ${JSON.stringify(line)}`);
    if (/##\w*\[/.test(whole)) found.push(`line ${index + 1}: inner command ${JSON.stringify(line)}`);
  });
  return found;
}

/** First and last code points of what no output may hold (Unicode 16: controls, format and tag characters, surrogates). */
const dangerous: readonly (readonly [number, number])[] = [
  [0x00, 0x08],
  [0x0a, 0x1f],
  [0x7f, 0x9f],
  [0xad, 0xad],
  [0x061c, 0x061c],
  [0x180e, 0x180e],
  [0x200b, 0x200f],
  [0x2028, 0x202e],
  [0x2060, 0x2064],
  [0x2066, 0x206f],
  [0xd800, 0xdfff],
  [0xfeff, 0xfeff],
  [0xfff9, 0xfffb],
  [0xe0001, 0xe0001],
  [0xe0020, 0xe007f],
];

function isDangerous(code: number): boolean {
  return dangerous.some(([first, last]) => code >= first && code <= last);
}
