import { basisWords, isSimulated } from '../../knowledge/origin.ts';
import { labelIn } from '../../registry/facts-of-key.ts';
import type { Statement } from '../../registry/generated/documents.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { isObject, type Path } from '../../registry/shape.ts';
import { statementsOf } from '../../registry/statement.ts';
import { leftColumns, rowNames, type Table, table } from '../../text/document.ts';
import { link, strong, type Text } from '../../text/inline.ts';
import { capitalised, wordsOf } from '../../text/words.ts';
import { profilePage, type WayTo } from '../address.ts';

const columns = [
  ...rowNames('What'),
  ...leftColumns('Value', '95 % interval', 'Basis', 'Holds', 'From', 'Date'),
];

/** Every statement of a profile as its file has it, each with what it rests on; null where it makes none. */
export function statementTable(profile: AnyProfile, registry: Registry, to: WayTo): Table | null {
  const rows = [...statementsOf(profile)].map(({ path, statement }) => {
    const text = (key: string) => writtenText(profile, [...path, key]);
    return [
      capitalised(labelIn(profile, path)),
      [strong(text('value'))],
      text('interval'),
      basisWords(statement.basis, isSimulated(statement, registry)),
      conditionsText(profile, path),
      groundText(statement, registry, to),
      statement.date ?? '',
    ];
  });
  return rows.length === 0
    ? null
    : table(columns, rows, { caption: 'Every figure, with what it rests on', name: 'values' });
}

/** What stands at a place of a profile's file: quantities with the unit that was typed. */
export function writtenText(profile: AnyProfile, path: Path): string {
  const value = writtenAt(profile, path);
  return typeof value === 'object' || value === undefined ? '' : String(value);
}

function writtenAt(profile: AnyProfile, path: Path): unknown {
  return profile.originalPath(path).reduce<unknown>((value, step) => {
    if (Array.isArray(value)) return value[Number(step)];
    return isObject(value) && Object.hasOwn(value, String(step)) ? value[String(step)] : undefined;
  }, profile.written);
}

/** `machine brackwater/lantern, nozzle hs-0.6, nozzle temperature 230 Cel`. */
function conditionsText(profile: AnyProfile, path: Path): string {
  const at = writtenAt(profile, [...path, 'at']);
  if (!isObject(at)) return 'always';
  return Object.keys(at)
    .map((name) => `${wordsOf(name)} ${writtenText(profile, [...path, 'at', name])}`)
    .join(', ');
}

/** The trial or source that a statement rests on, else the reason that it gives. */
function groundText(
  { evidence, source, reason, locator, note, fromMemory }: Statement<unknown>,
  registry: Registry,
  to: WayTo,
): Text {
  const named = [
    ...(evidence === undefined ? [] : [profileLink(registry, 'trial', evidence, to)]),
    ...(source === undefined ? [] : [profileLink(registry, 'source', source, to)]),
  ];
  const said = [locator, fromMemory === true ? 'from memory' : undefined, reason, note];
  return [...named.flatMap((each) => [each, ' ']), said.filter((text) => text !== undefined).join('; ')];
}

/** The id of a profile as a link to its page, where there is one. */
export function profileLink(
  registry: Registry,
  kind: AnyProfile['kind'],
  id: string,
  to: WayTo,
  shown: string = id,
): ReturnType<typeof link> | string {
  return registry[kind].has(id) ? link(shown, to(profilePage(kind, id))) : shown;
}
