import { createColors } from 'picocolors';
import type { Rule } from '../../rules/engine/rule.ts';

/** All rules for people: a heading a class, then code, severity and statement in columns. */
export function ruleList(classes: ReadonlyMap<string, readonly Rule[]>, colour: boolean): string {
  const colours = createColors(colour);
  const width = Math.max(...[...classes.values()].flat().map(({ code }) => code.length));
  const sections = [...classes].map(([name, rules]) => {
    const lines = rules.map(
      ({ code, severity, statement }) => `  ${code.padEnd(width)}  ${severity.padEnd(7)}  ${statement}`,
    );
    return [colours.bold(name), ...lines, ''].join('\n');
  });
  return `${sections.join('\n')}\nOne rule in full: meltbounds rules CODE\n`;
}
