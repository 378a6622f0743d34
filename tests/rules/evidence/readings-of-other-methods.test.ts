import { type NearMiss, type Slip, testCases } from '../edited-sample.ts';
import { trialWith } from '../second-profiles.ts';

const survey = 'trials/2026/clover-diameter.yaml';
const check = 'trials/2026/wren-chamber-check.yaml';
const grades = 'trials/2026/wren-clover-layer-time.yaml';
const retraction = 'trials/2026/wren-clover-retraction.yaml';
const sound = 'trials/2026/wren-sound.yaml';

/** A strand that is thick and thin in waves, along both axes alike. */
const diameters = [
  ...['0, 1.765, 1.758', '1, 1.790, 1.782', '2, 1.788, 1.777', '3, 1.765, 1.759', '4, 1.737, 1.727'],
  ...['5, 1.759, 1.749', '6, 1.779, 1.770', '7, 1.793, 1.784', '8, 1.782, 1.772', '9, 1.751, 1.740'],
];

const diameterSurvey = (rows: readonly string[]) =>
  trialWith(
    survey,
    `method: diameterSurvey
filament: oakhollow/clover-petg
conditions: {ambientTemperature: 21 Cel}
gauge: {resolution: 0.001 mm, accuracy: 0.002 mm}
observations:
  columns: {position: m, firstDiameter: mm, secondDiameter: mm}`,
    rows,
  );

const temperatures = [36.3, 43.3, 47.1, 49.3, 49.5, 50.2, 50.2, 50.4, 50.7, 50.6, 50.7, 50.8];

/** Readings of a bed every ten minutes, the last of them also as often again as asked. */
const setPointCheck = (shown: readonly number[], again = 0) =>
  trialWith(
    check,
    `method: setPointCheck
machine: plumstead/wren
filament: oakhollow/clover-petg
conditions: {ambientTemperature: 21 Cel}
thermometer: {resolution: 0.1 K, accuracy: 1 K}
checkedPart: bed
observations:
  columns: {setTemperature: Cel, elapsedTime: min, referenceTemperature: Cel}`,
    [...shown, ...Array.from({ length: again }, () => shown.at(-1) ?? 0)].map(
      (value, index) => `55, ${10 * Math.min(index + 1, shown.length)}, ${value}`,
    ),
  );

const gradesOf = (rows: readonly string[]) =>
  trialWith(
    grades,
    `method: layerTime
machine: plumstead/wren
nozzle: hs-0.4
filament: oakhollow/clover-petg
conditions: {nozzleTemperature: 245 Cel, bedTemperature: 75 Cel, ambientTemperature: 22 Cel, fan: 40 %}
acceptedGrade: 4
observations:
  columns: {layerTime: s, grade: '{count}'}`,
    rows,
  );

const oozes = [
  ...[
    '0.2, 15.17',
    '0.2, 13.38',
    '0.4, 2.64',
    '0.4, 2.51',
    '0.6, 0.80',
    '0.6, 0.98',
    '0.8, 0.52',
    '0.8, 0.42',
  ],
  ...['1.0, 0.19', '1.0, 0.27', '1.2, 0.16', '1.2, 0.13', '1.4, 0.10', '1.4, 0.10', '1.6, 0.07', '1.6, 0.07'],
];

const nothing = ['1.0, 0.00', '1.0, 0.00', '1.2, 0.00', '1.2, 0.00', '1.4, 0.00', '1.4, 0.00'];

const retractions = (file: string, rows: readonly string[], resolution = '0.01 mm') =>
  trialWith(
    file,
    `method: settingLadder
machine: plumstead/wren
nozzle: hs-0.4
filament: oakhollow/clover-petg
conditions: {nozzleTemperature: 245 Cel, bedTemperature: 75 Cel, ambientTemperature: 22 Cel}
acceptedDefect: 0.5 mm
gauge: {resolution: ${resolution}}
observations:
  columns: {retractionLength: mm, defectSize: mm}`,
    rows,
  );

const levels = (rows: readonly string[], resolution: string) =>
  trialWith(
    sound,
    `method: soundLevel
machine: plumstead/wren
nozzle: hs-0.4
filament: oakhollow/clover-petg
conditions: {nozzleTemperature: 245 Cel, printSpeed: 200 mm/s}
soundMeter: {class: class2, resolution: '${resolution} dB[SPL]{A}'}
observations:
  columns: {distance: m, soundLevel: 'dB[SPL]{A}', background: 'dB[SPL]{A}'}`,
    rows,
  );

const heard = ['1, 55.8, 33.1', '1, 55.6, 32.9', '1, 56.5, 34.1'];

const secondRetraction = 'trials/2026/wren-clover-retraction-again.yaml';

const slips: readonly Slip[] = [
  {
    slip: 'a diameter within the waves of the strand that differs from the other axis as no other place does',
    edits: [diameterSurvey(diameters.with(5, '5, 1.749, 1.800'))],
    found: [`warning evidence/reading-off-trend ${survey} | - »[5, 1.749, 1.800]`],
  },
  {
    slip: 'a temperature that falls back by 3 K while the part warms up',
    edits: [setPointCheck(temperatures.with(7, 47.2))],
    found: [`warning evidence/reading-off-trend ${check} | - »[55, 80, 47.2]`],
  },
  {
    slip: 'a temperature that rises by 5 K for one reading while the part warms up',
    edits: [setPointCheck(temperatures.slice(0, 9).with(4, 54.5))],
    found: [`warning evidence/reading-off-trend ${check} | - »[55, 50, 54.5]`],
  },
  {
    slip: 'the same moment of a run told twice',
    edits: [setPointCheck(temperatures, 1)],
    found: [`warning evidence/repeated-rows ${check} | - »[55, 120, 50.8]`],
  },
  {
    slip: 'grades that were pasted over those of the next step',
    edits: [
      gradesOf([
        '4, 2',
        '4, 2',
        '6, 3',
        '6, 3',
        '8, 4',
        '8, 4',
        '8, 4',
        '8, 4',
        '12, 5',
        '12, 5',
        '14, 5',
        '14, 5',
      ]),
    ],
    found: [`warning evidence/repeated-rows ${grades} | - »[8, 4]`],
  },
  {
    slip: 'a gauge said to be finer than any defect that it measured',
    edits: [retractions(retraction, oozes, '0.001 mm')],
    found: [`warning evidence/scale-digits ${retraction} | gauge: {resolution: »0.001 mm}`],
  },
  {
    slip: 'a sound meter said to be finer than any of its readings',
    edits: [levels(heard, '0.01')],
    found: [
      `warning evidence/scale-digits ${sound} | soundMeter: {class: class2, resolution: »'0.01 dB[SPL]{A}'}`,
    ],
  },
  {
    slip: 'a setting ladder without its last two rows under another name',
    edits: [retractions(retraction, oozes), retractions(secondRetraction, oozes.slice(0, -2))],
    found: [`warning identity/copied-readings ${secondRetraction} | »observations:`],
  },
];

const nearMisses: readonly NearMiss[] = [
  { nearMiss: 'a strand that is thick and thin in waves', edits: [diameterSurvey(diameters)] },
  { nearMiss: 'a sound meter with its own step', edits: [levels(heard, '0.1')] },
  {
    nearMiss: 'a ladder most of whose readings are nothing',
    edits: [retractions(retraction, [...oozes.slice(0, 8), ...nothing])],
  },
  { nearMiss: 'a part that warms up', edits: [setPointCheck(temperatures)] },
  {
    nearMiss: 'grades of even steps',
    edits: [
      gradesOf([
        '4, 2',
        '4, 2',
        '6, 3',
        '6, 3',
        '8, 4',
        '8, 4',
        '10, 4',
        '10, 5',
        '12, 5',
        '12, 5',
        '14, 5',
        '14, 5',
      ]),
    ],
  },
];

testCases({ slips, nearMisses });
