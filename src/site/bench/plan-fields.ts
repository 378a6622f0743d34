import type { Facts } from '../../bench/facts/fact.ts';
import { isObject } from '../../registry/shape.ts';
import { readYaml } from '../../registry/yaml/yaml-document.ts';
import type { DraftField } from './draft.ts';

/** What the plan decides; to have something else one plans anew. */
const fixed = ['machine', 'nozzle', 'filament', 'job', 'checkedPart'];

/** A key that the plan leaves open: `# operator: Who runs it`. */
const openLine = /^(\s*)# (\w+): (.+)$/;

/**
 * The fields of a form from the lines of an empty trial: what they state, what they leave open, and the other facts that
 * the method can use.
 */
export function fieldsOfLines(lines: readonly string[], facts: Facts): DraftField[] {
  const { document } = readYaml(lines.join('\n'));
  const stated = leaves(document?.value ?? {}, []);
  const open = lines.flatMap((line): DraftField[] => {
    const [, indent = '', key = '', example = ''] = openLine.exec(line) ?? [];
    if (key === '') return [];
    const path = indent === '' ? key : `conditions.${key}`;
    return [{ path, preset: '', example, isNumber: false, isFixed: false }];
  });
  const others = Object.values(facts).flatMap(({ statedIn, place, example, form }): DraftField[] => {
    const path = place.split(/[^a-zA-Z]+/).filter((key) => key !== '');
    if (statedIn !== 'trial' || path[0] === 'events') return [];
    return [{ path: path.join('.'), preset: '', example, isNumber: form === 'wholeNumber', isFixed: false }];
  });
  const all = [...open.filter(({ path }) => isAskedFirst(path)), ...stated, ...open, ...others];
  return all.filter(({ path }, place) => all.findIndex((field) => field.path === path) === place);
}

function isAskedFirst(path: string): boolean {
  return path === 'operator' || path === 'batch';
}

function leaves(value: unknown, path: readonly string[]): DraftField[] {
  if (isObject(value)) return Object.entries(value).flatMap(([key, inner]) => leaves(inner, [...path, key]));
  if (value === null || value === undefined) return [];
  const isFixed = fixed.includes(path[0] ?? '');
  return [
    {
      path: path.join('.'),
      preset: String(value),
      example: '',
      isNumber: typeof value === 'number',
      isFixed,
    },
  ];
}
