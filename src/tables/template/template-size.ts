import type { TemplateSpans } from 'mustache';
import type { TemplateValue, TemplateView } from './template-view.ts';

/** Items that a variable may be looked for in: of the innermost list first, the whole view last. */
type TemplateLevels = readonly (readonly TemplateView[])[];

/** Characters that an escape makes of one, at most: `\\u{10ffff}`. */
const widest = 10;

/** An upper bound of the characters that spans write, without writing them. */
export function mostOutput(spans: TemplateSpans, levels: TemplateLevels): number {
  return spans.reduce((sum, span) => {
    const [type, name] = span;
    if (type === 'text') return sum + name.length;
    const values = valuesOf(name, levels);
    if (type === 'name' || type === '&') return sum + widest * Math.max(0, ...values.map(lengthOf));
    const inner = span[4];
    if (!Array.isArray(inner)) return sum;
    return sum + (type === '#' ? sectionOutput(inner, values, levels) : mostOutput(inner, levels));
  }, 0);
}

function sectionOutput(
  inner: TemplateSpans,
  values: readonly TemplateValue[],
  levels: TemplateLevels,
): number {
  const items = values.map(itemsOf);
  const repeats = Math.max(1, ...items.map((each) => each.length));
  return repeats * mostOutput(inner, [items.flat(), ...levels]);
}

/** The items of a list; a text or number is its own only variable. */
function itemsOf(value: TemplateValue): TemplateView[] {
  if (typeof value !== 'object' || value === null) return [{ '.': value }];
  return value.map((item: string | TemplateView) => (typeof item === 'string' ? { '.': item } : item));
}

/** The values of a variable in the first level that has it. */
function valuesOf(name: string, levels: TemplateLevels): TemplateValue[] {
  const level = levels.find((views) => views.some((view) => Object.hasOwn(view, name))) ?? [];
  return level.flatMap((view) => {
    const value = view[name];
    return value === undefined ? [] : [value];
  });
}

function lengthOf(value: TemplateValue): number {
  return String(value).length;
}
