import { weakerBasis } from '../../registry/statement.ts';
import type { ConditionRow } from '../derive/conditions/condition-row.ts';

/** A column of the table of conditions; `unit` is null for words and for numbers whose unit stands in their row. */
interface ConditionColumn {
  readonly key:
    | 'condition'
    | 'flow'
    | 'low'
    | 'high'
    | 'unit'
    | 'familyLow'
    | 'familyHigh'
    | 'basis'
    | 'flags'
    | 'restsOn'
    | 'note';
  readonly unit: 'mm3/s' | null;
  readonly isNumber: boolean;
  readonly description: string;
}

export const conditionColumns: readonly ConditionColumn[] = [
  { key: 'condition', unit: null, isNumber: false, description: 'What is to be set, or known' },
  {
    key: 'flow',
    unit: 'mm3/s',
    isNumber: true,
    description: 'Flow that the nozzle temperature feeds, or at which the spool empties',
  },
  {
    key: 'low',
    unit: null,
    isNumber: true,
    description: 'Least value, in the unit of the row; empty: not stated, or none is safe',
  },
  { key: 'high', unit: null, isNumber: true, description: 'Largest value, in the unit of the row' },
  { key: 'unit', unit: null, isNumber: false, description: 'UCUM unit of low and high' },
  {
    key: 'familyLow',
    unit: null,
    isNumber: true,
    description: 'Least value that is published of the family, where the filament states none',
  },
  { key: 'familyHigh', unit: null, isNumber: true, description: 'Largest such value' },
  { key: 'basis', unit: null, isNumber: false, description: 'Basis of the weakest number that it rests on' },
  {
    key: 'flags',
    unit: null,
    isNumber: false,
    description:
      'What a reader must know of those numbers, words separated by a space: unsupported, stale, acknowledged, weakBasis, capped, simulated, invented; empty where there is nothing',
  },
  {
    key: 'restsOn',
    unit: null,
    isNumber: false,
    description: 'Sources and trials of the numbers, separated by a semicolon',
  },
  { key: 'note', unit: null, isNumber: false, description: 'What to mind' },
];

/** Heading of a column: its name with the unit, as bench sheets write it. */
export function conditionHeading({ key, unit }: ConditionColumn): string {
  return unit === null ? key : `${key} [${unit}]`;
}

/** The cell of a condition: a number, or text; null where it is empty. */
export function conditionCell(row: ConditionRow, { key }: ConditionColumn): string | number | null {
  const { name, flow, window, ofFamily, unit, flags, note } = row;
  const cells = {
    condition: name,
    flow,
    low: window?.low ?? null,
    high: window?.high ?? null,
    familyLow: ofFamily?.low ?? null,
    familyHigh: ofFamily?.high ?? null,
    unit,
    basis: basisOf(row),
    flags: flags.join(' ') || null,
    restsOn: restsOn(row).join('; ') || null,
    note: [row.isStated || row.window !== null ? '' : 'Not stated.', note].join(' ').trim() || null,
  };
  return cells[key];
}

function basisOf({ sourcedValues, isStated, name }: ConditionRow): string | null {
  if (!isStated && name !== 'firstLayerNozzleTemperature') return null;
  const bases = sourcedValues.flatMap(({ basis }) => basis ?? []);
  const [first, ...others] = bases;
  return first === undefined ? null : others.reduce(weakerBasis, first);
}

/** `trial ID`, `source ID`, or the reason of an assumption, each once. */
function restsOn({ sourcedValues }: ConditionRow): string[] {
  const all = sourcedValues.flatMap(({ evidence, source, reason }) => {
    if (evidence !== null) return [`trial ${evidence}`];
    if (source !== null) return [`source ${source}`];
    // A reason may run over several lines, a cell may not.
    return reason === null ? [] : [reason.replace(/\s+/g, ' ').trim()];
  });
  return [...new Set(all)];
}
