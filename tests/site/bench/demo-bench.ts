import { fileURLToPath } from 'node:url';
import { loadFolders } from '../../../src/host/load-registry.ts';
import type { Profile } from '../../../src/registry/profile.ts';
import { isObject } from '../../../src/registry/shape.ts';
import {
  type Draft,
  type DraftField,
  draftOf,
  type EntryContent,
  type RunAsked,
} from '../../../src/site/bench/draft.ts';
import { entriesOfSheet } from '../../../src/site/bench/dropped-sheet.ts';
import { planDraft } from '../../../src/site/bench/plan-draft.ts';
import {
  commonPart,
  familyOf,
  familyPart,
  filamentPart,
  machinePart,
} from '../../../src/site/bench/registry-part.ts';
import { type BenchSession, startSession } from '../../../src/site/bench/session.ts';
import { formatCsv } from '../../../src/text/csv.ts';

export const root = fileURLToPath(new URL('../../..', import.meta.url));
export const demo = loadFolders(['profiles'], root).registry;

const isOwn = () => true;

/** A session of the bench page with the demo registry. */
export function demoSession(machine: string, filament: string, own = isOwn): BenchSession {
  const machineProfile = demo.machine.get(machine);
  const filamentProfile = demo.filament.get(filament);
  if (machineProfile === undefined || filamentProfile === undefined)
    throw new Error(`${machine} ${filament}`);
  const parts = [
    commonPart(demo, own),
    ...[demo.polymer.get(familyOf(filamentProfile, demo) ?? '') ?? []]
      .flat()
      .map((family) => familyPart(demo, family, own)),
    machinePart(demo, machineProfile, own),
    filamentPart(demo, filamentProfile, own),
  ];
  return startSession(parts, { folder: 'profiles', schemas: '../schema' }, '2026-12-31');
}

/** What a new run of a trial's pairing is planned for. */
export function askedFor({ data }: Profile<'trial'>): RunAsked {
  const { machine = 'brackwater/lantern', nozzle, filament, method, checkedPart } = data;
  const columns = Object.keys(data.observations.columns ?? {});
  return {
    ...{ machine, filament, method, policy: null },
    nozzle: nozzle ?? null,
    subject: checkedPart ?? (method === 'settingLadder' ? (columns[0] ?? null) : null),
    // A trial may have been run outside of what its profiles allow today.
    temperature: null,
    read: null,
  };
}

/** Makes entries one draft. */
export function drafted(...groups: readonly (readonly EntryContent[])[]): Draft {
  const entries = groups.flatMap((contents, time) =>
    contents.map((content) => ({ draft: 'test', time, by: 'test', ...content })),
  );
  const draft = draftOf(entries);
  if (draft === null) throw new Error('no head');
  return draft;
}

/** The draft of a run that was planned, with nothing read yet. */
export function plannedDraft(session: BenchSession, asked: RunAsked): readonly EntryContent[] {
  const planned = planDraft(session, asked);
  if (!planned.ok) throw new Error(planned.error.message);
  return planned.value.entries;
}

/** A trial of the demo registry as somebody would have typed it on the page, under another id. */
export function typedTrial(session: BenchSession, trial: Profile<'trial'>): Draft {
  const begun = plannedDraft(session, askedFor(trial));
  const head = begun.find((entry) => entry.part === 'head');
  if (head === undefined) throw new Error('no head');
  const stated = leaves(trial.written, []).filter(
    ({ path }) =>
      !['kind', 'id', 'method', 'observations', 'notice', 'events', 'fieldNotes'].includes(
        path.split('.')[0] ?? '',
      ),
  );
  const asked = head.value.fields.filter(
    ({ path }) => path === 'id' || stated.some((field) => field.path === path),
  );
  const fields = [...asked, ...stated.filter(({ path }) => !asked.some((field) => field.path === path))];
  const typed: EntryContent[] = [
    { part: 'head', value: { ...head.value, fields } },
    ...stated.map(({ path, preset }): EntryContent => ({ part: 'field', name: path, value: preset })),
    { part: 'field', name: 'id', value: `${trial.id}-typed` },
    { part: 'event', value: eventOf(trial) },
  ];
  const planned = drafted(begun, typed);
  const sheet = entriesOfSheet(planned, new TextEncoder().encode(sheetOf(trial)));
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.error));
  return drafted(
    begun,
    typed,
    sheet.value.map((entry) =>
      entry.part === 'head' ? { ...entry, value: { ...entry.value, fields } } : entry,
    ),
  );
}

/** The readings of a trial as a sheet. */
export function sheetOf({ attachment, data: { observations } }: Profile<'trial'>): string {
  if (attachment?.ok) return attachment.source.text;
  const { columns = {}, rows = [] } = observations;
  const header = Object.entries(columns).map(([name, unit]) => `${name} [${unit}]`);
  return formatCsv([header, ...rows]);
}

function eventOf({ data: { events = [] } }: Profile<'trial'>) {
  const [first] = events;
  return first === undefined ? null : { event: first.event, flow: String(first.commandedFlow) };
}

function leaves(value: unknown, path: readonly string[]): DraftField[] {
  if (isObject(value)) return Object.entries(value).flatMap(([key, inner]) => leaves(inner, [...path, key]));
  return [
    {
      path: path.join('.'),
      preset: String(value),
      example: '',
      isNumber: typeof value === 'number',
      isFixed: false,
    },
  ];
}
