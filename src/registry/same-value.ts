/** Whether two plain values of YAML or JSON are the same, whatever the order of their keys. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [left, right] = [Object.entries(a), new Map<string, unknown>(Object.entries(b))];
  return (
    left.length === right.size &&
    left.every(([key, value]) => right.has(key) && sameValue(value, right.get(key)))
  );
}
