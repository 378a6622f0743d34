import type { Registry } from './registry.ts';

/** An index over a whole registry, built when a rule first asks for it and kept as long as the registry is. */
export function oncePerRegistry<Index>(build: (registry: Registry) => Index): (registry: Registry) => Index {
  const built = new WeakMap<Registry, { readonly index: Index }>();
  return (registry) => {
    const known = built.get(registry) ?? { index: build(registry) };
    built.set(registry, known);
    return known.index;
  };
}
