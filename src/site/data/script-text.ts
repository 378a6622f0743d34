/** Names under which the data of the site stand for its script; pages opened as files can load nothing but scripts. */
export const dataNames = { catalogue: 'meltboundsCatalogue', pairings: 'meltboundsPairings' } as const;

/** A value as a script that sets a global name. It is safe inside and outside of a page. */
export function scriptOf(target: string, value: unknown): string {
  const json = JSON.stringify(value).replace(/[<\u2028\u2029\p{Cf}]/gu, escaped);
  return `globalThis.${target} = ${json};\n`;
}

function escaped(character: string): string {
  return Array.from(
    { length: character.length },
    (_, index) => `\\u${character.charCodeAt(index).toString(16).padStart(4, '0')}`,
  ).join('');
}
