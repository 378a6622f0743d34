import { kindNames, readSchema } from './schema-files.ts';

const fileMatch: Readonly<Record<(typeof kindNames)[number], string>> = {
  machine: '**/profiles/machines/*/*.yaml',
  filament: '**/profiles/filaments/*/*.yaml',
  polymer: '**/profiles/polymers/*.yaml',
  trial: '**/profiles/trials/*/*.yaml',
  policy: '**/profiles/policies/*.yaml',
  job: '**/profiles/jobs/*.yaml',
  source: '**/profiles/sources/*.yaml',
  addition: '**/profiles/additions/*.yaml',
};

/** The bundled schemas in the form in which schema stores list what they know; the addresses hold once a version is published. */
export function catalogueEntries(): object {
  return {
    version: 1,
    schemas: kindNames.map((kind) => ({
      name: `meltbounds ${kind}`,
      description: readSchema(kind).description ?? '',
      fileMatch: [fileMatch[kind]],
      url: `https://unpkg.com/meltbounds@0/schema/bundle/${kind}.schema.json`,
    })),
  };
}
