import { clover, type NearMiss, type Slip, testCases } from '../edited-sample.ts';

const named = (name: string) => [{ in: clover, from: 'name: Clover PETG', to: `name: ${name}` }];
const warning = (name: string) => [`warning consistency/name-material ${clover} | name: »${name}`];

const colours = [
  'Clover PETG Wood Brown',
  'Clover PETG glass clear',
  'Clover PETG carbon grey',
  'Clover Green Glass',
];
const looks = ['Clover PETG, wood look', 'Clover glass-like PETG', 'Clover PETG carbon effect'];
const uses = ['Clover PETG for ABS parts', 'Clover, instead of PLA', 'Clover PETG for wood workers'];
const supports = ['Clover support PLA', 'Clover breakaway, PLA'];

const nearMisses: readonly NearMiss[] = [...colours, ...looks, ...uses, ...supports].map((name) => ({
  nearMiss: `the name "${name}"`,
  edits: named(name),
}));

const promises = [
  'Clover Wood',
  'Clover PETG carbon',
  'Clover glass fibre PETG',
  'Clover PLA',
  'Clover Wood for masks',
];

const slips: readonly Slip[] = promises.map((name) => ({
  slip: `the name "${name}"`,
  edits: named(name),
  found: warning(name),
}));

testCases({ slips, nearMisses });
