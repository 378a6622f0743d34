/** What two versions of the schemas say differently, by place: `filament/dryingTime`. */
export interface SchemaDiff {
  /** Properties and choices that are new. */
  readonly added: readonly string[];
  /** What a file that was valid may now fail by: a property or choice that is gone, or one that must now be there. */
  readonly breaking: readonly string[];
}

/** Schemas by name: `filament` → its JSON. */
export type Schemas = ReadonlyMap<string, unknown>;

/** Compares the properties, the required ones among them, and the choices of schemas; not patterns and bounds. */
export function schemaDiff(base: Schemas, head: Schemas): SchemaDiff {
  const [before, after] = [factsOf(base), factsOf(head)];
  const gone = [...before.places].filter((place) => !after.places.has(place));
  const demanded = [...after.required].filter(
    (place) => before.places.has(place) && !before.required.has(place),
  );
  const added = [...after.places].filter((place) => !before.places.has(place));
  // A new property that must be there makes every file without it invalid, unless all that it stands in is new.
  const newlyDemanded = added.filter(
    (place) => after.required.has(place) && before.places.has(parentOf(place)),
  );
  return {
    added: added.filter((place) => !newlyDemanded.includes(place) && !added.includes(parentOf(place))),
    breaking: [
      ...gone.filter((place) => !gone.includes(parentOf(place))).map((place) => `${place} is gone`),
      ...[...demanded, ...newlyDemanded].map((place) => `${place} is mandatory`),
    ],
  };
}

interface Facts {
  readonly places: Set<string>;
  readonly required: Set<string>;
}

function factsOf(schemas: Schemas): Facts {
  const facts: Facts = { places: new Set(), required: new Set() };
  for (const [name, schema] of schemas) {
    facts.places.add(name);
    collect(schema, name, facts);
  }
  return facts;
}

function collect(schema: unknown, place: string, facts: Facts): void {
  if (!isRecord(schema)) return;
  for (const key of ['properties', 'definitions']) {
    const inner = schema[key];
    for (const [name, property] of isRecord(inner) ? Object.entries(inner) : []) {
      facts.places.add(`${place}/${name}`);
      collect(property, `${place}/${name}`, facts);
    }
  }
  for (const name of Array.isArray(schema.required) ? schema.required : [])
    facts.required.add(`${place}/${String(name)}`);
  for (const choice of Array.isArray(schema.enum) ? schema.enum : [])
    facts.places.add(`${place}/${String(choice)}`);
  collect(schema.items, place, facts);
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function parentOf(place: string): string {
  return place.slice(0, place.lastIndexOf('/'));
}
