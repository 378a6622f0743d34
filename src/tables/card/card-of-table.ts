import { originHeading } from '../../knowledge/origin.ts';
import { formatQuirkLine } from '../../knowledge/quirk-words.ts';
import { sha256Of } from '../../text/sha256.ts';
import { counted, headingWords, wordsOf } from '../../text/words.ts';
import { inPrint } from '../../units/in-print.ts';
import { roundUp } from '../../units/round-to-step.ts';
import type { ConditionName, ConditionRow } from '../derive/conditions/condition-row.ts';
import type { RowFlag } from '../derive/row-flag.ts';
import type { SpeedRow, SpeedTable } from '../derive/speed-table.ts';
import { flowLimitText } from '../write/head-text.ts';
import { basisText, withUnit } from '../write/words.ts';
import {
  type CardFeature,
  type CardNote,
  type CardSetting,
  type CardView,
  cardRoom,
  firstLine,
  spread,
} from './card-view.ts';
import { settingText } from './conditions-block.ts';

/**
 * The card of a table. At the narrowest line width, and for three layer heights at most: the lowest, the middle and the
 * highest. Warnings and quirks keep their first line, the first few of each; the rest stands on the pages behind.
 */
export function cardView(speeds: SpeedTable): CardView {
  const { rows, conditions } = speeds;
  const lineWidth = Math.min(...rows.map((row) => row.lineWidth));
  const narrow = rows.filter((row) => row.lineWidth === lineWidth);
  const heights = distinct(narrow.map((row) => row.layerHeight)).sort((a, b) => a - b);
  const layerHeights = spread(heights, cardRoom.layerHeights);
  const shownRows = narrow.filter((row) => layerHeights.includes(row.layerHeight));
  const setting = (name: ConditionName) => conditions.find((row) => row.name === name);
  const title = `${speeds.filament} on ${speeds.machine}`;
  const features = distinct(rows.map(({ feature }) => feature)).map((feature) =>
    featureOf(
      shownRows.filter((row) => row.feature === feature),
      layerHeights,
    ),
  );
  const isRoomy = hasRoom(title, features);
  return {
    title,
    isRoomy,
    facts: factsOf(speeds),
    origin: originHeading(speeds.origin),
    settings: [
      ...nozzleSettings(speeds),
      flowSetting(speeds),
      settingOf('Bed', setting('bedTemperature')),
      settingOf('Chamber', setting('chamberTemperature')),
      dryingSetting(setting('dryingTemperature'), setting('dryingTime')),
    ],
    layerHeights,
    lineWidth,
    features,
    marks: marksOf(shownRows),
    besides: [
      retractionSetting(setting('retractionLength'), setting('retractionSpeed')),
      measuredSetting('Pressure compensation', setting('pressureCompensation')),
      settingOf('Shortest layer', setting('shortestLayerTime')),
    ],
    ...notesOf(speeds, heights.length - layerHeights.length, isRoomy),
    versions: versionsOf(speeds),
    digest: digestOf(speeds),
  };
}

function hasRoom(title: string, features: readonly CardFeature[]): boolean {
  const { roomy } = cardRoom;
  return (
    title.length <= roomy.title && features.every(({ limitedBy }) => limitedBy.length <= roomy.limitedBy)
  );
}

function factsOf({ nozzle, nozzleDiameter, policy, largestFlow: { trials } }: SpeedTable): string[] {
  const newest = trials
    .map(({ date }) => date)
    .sort()
    .at(-1);
  return [
    `nozzle ${nozzle}, ${withUnit(nozzleDiameter, 'mm')}`,
    `rules of ${policy}`,
    newest === undefined ? 'rests on no trial' : `data of ${newest}`,
  ];
}

function nozzleSettings({ temperatures: { print, firstLayer } }: SpeedTable): CardSetting[] {
  return [
    { name: 'Nozzle', value: withUnit(print, 'Cel'), note: '' },
    { name: 'First layer', value: withUnit(firstLayer, 'Cel'), note: '' },
  ];
}

/** What the house lets one type in, and below it the limit that it comes from. */
function flowSetting({ largestFlow }: SpeedTable): CardSetting {
  const { usable, basis, isSimulated, note } = largestFlow;
  return {
    name: 'Flow to use',
    value: withUnit(usable, 'mm3/s'),
    note: [
      `largest flow ${flowLimitText(largestFlow)}`,
      basisText(basis, isSimulated ? ['simulated'] : []),
      ...(note === null ? [] : [firstLine(inPrint(note), cardRoom.flowNoteLength)]),
    ].join(', '),
  };
}

function settingOf(name: string, row: ConditionRow | undefined): CardSetting {
  if (row === undefined) return { name, value: 'not stated', note: '' };
  return { name, value: shownValue(row), note: familyNote(row) };
}

function shownValue(row: ConditionRow): string {
  return row.window === null && !row.isStated ? 'not stated' : settingText(row);
}

/** What is published of the family of the filament, for settings that belong together. */
function familyNote(...rows: readonly (ConditionRow | undefined)[]): string {
  const figures = rows.flatMap((row) => (row?.ofFamily ? [{ ...row.ofFamily, unit: row.unit }] : []));
  const [first] = figures;
  if (first === undefined) return '';
  const ranges = figures.map(({ low, high, unit }) =>
    low === high ? withUnit(high, unit) : `${low} to ${withUnit(high, unit)}`,
  );
  return `${first.family} as published: ${ranges.join(', ')}`;
}

function dryingSetting(temperature: ConditionRow | undefined, time: ConditionRow | undefined): CardSetting {
  const values = [temperature, time && inTenths(time)].map((row) => settingOf('', row).value);
  return { name: 'Drying', value: distinct(values).join(', '), note: familyNote(temperature, time) };
}

/** Drying for longer is the safe side. */
function inTenths(row: ConditionRow): ConditionRow {
  const { window } = row;
  if (window === null) return row;
  return { ...row, window: { low: roundUp(window.low, 0.1), high: roundUp(window.high, 0.1) } };
}

function retractionSetting(length: ConditionRow | undefined, speed: ConditionRow | undefined): CardSetting {
  const [far, fast] = [measuredSetting('Retraction', length), settingOf('', speed)];
  if (length?.isStated !== true) return far;
  const atSpeed = speed?.isStated === true ? ` at ${fast.value}` : ', speed not measured';
  const notes = distinct([far.note, measuredSetting('', speed).note].filter((note) => note !== ''));
  return { ...far, value: `${far.value}${atSpeed}`, note: notes.join(', ') };
}

/** A setting that only a bench can find: where it has not, the card says so. */
function measuredSetting(name: string, row: ConditionRow | undefined): CardSetting {
  if (row?.isStated !== true) return { name, value: 'not measured', note: '' };
  const bases = distinct(row.sourcedValues.map(({ basis }) => basis));
  const note = bases.map((basis) => (basis === null ? 'house rule' : basisText(basis, row.flags)));
  return { name, value: shownValue(row), note: note.join(', ') };
}

function featureOf(rows: readonly SpeedRow[], layerHeights: readonly number[]): CardFeature {
  const shown = layerHeights.map((height) => rows.find((row) => row.layerHeight === height) ?? null);
  const [first] = rows;
  return {
    name: headingWords(first?.feature ?? ''),
    speeds: shown.map((row) => row?.speed ?? null),
    acceleration: Math.min(...rows.map(({ acceleration }) => acceleration)),
    fan: first === undefined || first.feature === 'travel' ? '' : fanText(first),
    limitedBy: limitedBy(shown.filter((row) => row !== null)),
  };
}

function fanText({ fan }: SpeedRow): string {
  return fan === null ? 'not stated' : withUnit(Math.round(1000 * fan) / 10, '%');
}

/** The bound of the lowest layer, then each that takes over, with the height from which on the card shows it. */
function limitedBy(rows: readonly SpeedRow[]): string {
  const words = rows.map(boundWords);
  return words
    .flatMap((word, index) => {
      if (word === words[index - 1]) return [];
      const { layerHeight = 0 } = rows[index] ?? {};
      return index === 0 ? [word] : [`${word} from ${withUnit(layerHeight, 'mm')}`];
    })
    .join(', ');
}

/** A bound with its basis where that is weak, a star where something else stands against it, and the numbers of quirks. */
function boundWords(row: SpeedRow): string {
  const { bound, basis, quirks } = row;
  const isSound = basis === null || basis === 'measured' || basis === 'published';
  const numbers = quirks.slice(0, cardRoom.quirkMarks).map((index) => `†${index + 1}`);
  const more = quirks.length > numbers.length ? '…' : '';
  const marks = [starredFlags(row).length === 0 ? '' : '*', ...numbers, more].join('');
  return `${bound}${isSound ? '' : ` (${basis})`}${marks}`;
}

/** What the marks of some rows stand for. */
function marksOf(rows: readonly SpeedRow[]): string[] {
  const flags = distinct(rows.flatMap(starredFlags)).sort().map(wordsOf);
  return [
    ...(flags.length === 0 ? [] : [`* ${flags.join(', ')}: what that means stands overleaf`]),
    ...(rows.every(({ quirks }) => quirks.length === 0) ? [] : ['† the quirk of that number concerns it']),
  ];
}

/** The flags of a row that neither the basis beside its bound, nor a quirk, nor the head of the card tells. */
function starredFlags({ flags }: SpeedRow): RowFlag[] {
  const told: readonly RowFlag[] = ['weakBasis', 'simulated', 'invented', 'quirk'];
  return flags.filter((flag) => !told.includes(flag));
}

/** The first warnings and the newest quirks, each with its first line, and how much stands overleaf. */
function notesOf(
  { warnings, quirks }: SpeedTable,
  heightsLeft: number,
  isRoomy: boolean,
): Pick<CardView, 'notes' | 'overleaf'> {
  const length = isRoomy ? cardRoom.roomy.note : cardRoom.noteLength;
  const lines = (texts: readonly string[]) => texts.map((text) => firstLine(inPrint(text), length));
  const shownQuirks = lines(quirks.slice(0, cardRoom.quirks).map(formatQuirkLine));
  const shownWarnings = lines(warnings.slice(0, cardRoom.warnings));
  const more = (count: number, what: string) => (count === 0 ? [] : [counted(count, `more ${what}`)]);
  return {
    notes: [
      ...shownQuirks.map((text, index): CardNote => ({ label: `Quirk ${index + 1}`, text })),
      ...shownWarnings.map((text): CardNote => ({ label: 'Warning', text })),
    ],
    overleaf: [
      ...more(heightsLeft, 'layer height'),
      ...more(quirks.length - shownQuirks.length, 'quirk'),
      ...more(warnings.length - shownWarnings.length, 'warning'),
    ],
  };
}

/** Machine, filament and policy; the makers stand in the title. */
function versionsOf({ machine, filament, policy, inputs }: SpeedTable): string[] {
  return [machine, filament, policy].flatMap((id) => {
    const version = inputs.find((input) => input.id === id)?.version ?? null;
    const name = firstLine(id.slice(id.indexOf('/') + 1), cardRoom.versionLength);
    return version === null ? [] : [`${name} ${version}`];
  });
}

/** Of the digests of all that the table was derived from, so that two cards of the same data have the same one. */
function digestOf({ inputs }: SpeedTable): string {
  return sha256Of(inputs.map(({ kind, id, digest }) => `${kind} ${id} ${digest}\n`).join('')).slice(0, 8);
}

function distinct<Value>(values: readonly Value[]): Value[] {
  return [...new Set(values)];
}
