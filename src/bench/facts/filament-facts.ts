import { chooseStatement } from '../../registry/statement.ts';
import type { Fact } from './fact.ts';

/** Nominal diameter of the filament, mm. */
export const filamentDiameter: Fact<number> = {
  what: 'filament diameter',
  form: { dimension: 'length' },
  example: '1.75 mm',
  flag: 'diameter',
  statedIn: 'filament',
  place: 'diameter of the filament profile',
  read: (_, filament) => filament?.diameter,
};

/** Nominal density of the filament, g/mm3. */
export const filamentDensity: Fact<number> = {
  what: 'filament density',
  form: { dimension: 'density' },
  example: '1.24 g/cm3',
  flag: 'density',
  statedIn: 'filament',
  place: 'density of the filament profile',
  read: ({ machine, filament: id }, filament) =>
    chooseStatement(filament?.density, { ...(machine !== undefined && { machine }), filament: id })?.value,
};
