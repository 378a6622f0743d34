import { cloverTrial, daisyTrial, type NearMiss, type Slip, testCases } from '../edited-sample.ts';

const room = '  ambientTemperature: 21 Cel\n';
const humidityOf = (file: string, percent: number) => ({
  in: file,
  from: room,
  to: `${room}  relativeHumidity: ${percent} %\n`,
});
const colder = 'trials/2026/wren-daisy-pla-215.yaml';

const slips: readonly Slip[] = [
  {
    slip: 'a room temperature whose digits changed places',
    edits: [{ in: cloverTrial, from: room, to: '  ambientTemperature: 12 Cel\n' }],
    found: [`warning evidence/other-room ${cloverTrial} | ambientTemperature: »12 Cel`],
  },
  {
    slip: 'a humidity that is far from that of the days before',
    edits: [humidityOf(cloverTrial, 84), humidityOf(daisyTrial, 48), humidityOf(colder, 50)],
    found: [`warning evidence/other-room ${cloverTrial} | relativeHumidity: »84 %`],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a cool morning',
    edits: [{ in: cloverTrial, from: room, to: '  ambientTemperature: 15 Cel\n' }],
  },
  {
    nearMiss: 'the same room more than a week later',
    edits: [
      { in: cloverTrial, from: "date: '2026-02-12'", to: "date: '2026-02-20'" },
      { in: cloverTrial, from: room, to: '  ambientTemperature: 31 Cel\n' },
    ],
  },
  {
    nearMiss: 'other runs that do not agree on the air',
    edits: [humidityOf(cloverTrial, 84), humidityOf(daisyTrial, 35), humidityOf(colder, 55)],
  },
  {
    nearMiss: 'a run by somebody else',
    edits: [
      { in: cloverTrial, from: 'operator: Bench at Plum Lane', to: 'operator: Bench at the Quay' },
      { in: cloverTrial, from: room, to: '  ambientTemperature: 31 Cel\n' },
    ],
  },
  {
    nearMiss: 'a run of which nobody says whose it is',
    edits: [
      { in: cloverTrial, from: 'operator: Bench at Plum Lane\n', to: '' },
      { in: cloverTrial, from: room, to: '  ambientTemperature: 31 Cel\n' },
    ],
  },
  {
    nearMiss: 'only one other run that says',
    edits: [humidityOf(cloverTrial, 84), humidityOf(daisyTrial, 48)],
  },
];

testCases({ slips, nearMisses });
