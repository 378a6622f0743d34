import { isObject } from '../../registry/shape.ts';

/** Whether two values of documents are the same, whatever the order of their keys. */
export function isSameValue(a: unknown, b: unknown): boolean {
  if (Array.isArray(a) && Array.isArray(b)) {
    return a.length === b.length && a.every((item, index) => isSameValue(item, b[index]));
  }
  if (!isObject(a) || !isObject(b)) return Object.is(a, b);
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && isSameValue(a[key], b[key]))
  );
}
