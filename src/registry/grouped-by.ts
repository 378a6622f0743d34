/** Things by a key of theirs, in the order in which they come. */
export function groupedBy<Thing>(
  things: Iterable<Thing>,
  keyOf: (thing: Thing) => string,
): Map<string, Thing[]> {
  const groups = new Map<string, Thing[]>();
  for (const thing of things) {
    const group = groups.get(keyOf(thing));
    if (group === undefined) groups.set(keyOf(thing), [thing]);
    else group.push(thing);
  }
  return groups;
}
