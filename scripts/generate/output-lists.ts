import { methodNames } from '../../src/bench/method-facts.ts';
import { allMethods } from '../../src/bench/methods.ts';
import { warningCodes } from '../../src/knowledge/suitability/suitability.ts';
import { features } from '../../src/registry/generated/key-facts.ts';
import { withList } from './schema-list.ts';

const quantities = allMethods.flatMap(({ results }) => Object.keys(results));

/** What schemas of outputs list that stands elsewhere already: by schema, the values of a property. */
const outputLists: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  comparison: { feature: features },
  diff: { feature: features },
  match: { warning: warningCodes },
  plan: { method: methodNames, warning: warningCodes },
  reduction: { method: methodNames, quantity: [...new Set(quantities)] },
  tables: { feature: features },
};

/** Names of the schemas of outputs that hold such lists. */
export const listingOutputs = Object.keys(outputLists);

/** The schema of an output with its lists as they are today; nothing else of the text changes. */
export function listingSchema(name: string, text: string): string {
  return Object.entries(outputLists[name] ?? {}).reduce(
    (listed, [property, values]) => withList(listed, property, values),
    text,
  );
}
