import { expect, it } from 'vitest';
import { matchingChoices } from '../../src/site/find/choices.ts';

const choices = [
  { id: 'brackwater/lantern', name: 'Lantern (brackwater/lantern)' },
  { id: 'emberlow/hearth', name: 'Hearth (emberlow/hearth)' },
  { id: 'tollwick/plain-hearth', name: 'Old Hearth (tollwick/plain-hearth)' },
  { id: 'ferrywright/sheartop', name: 'Sheartop (ferrywright/sheartop)' },
];
const ids = (typed: string, most = 30) => matchingChoices(choices, typed, most).shown.map(({ id }) => id);

it.each([
  ['', ['brackwater/lantern', 'emberlow/hearth', 'tollwick/plain-hearth', 'ferrywright/sheartop']],
  ['hear', ['emberlow/hearth', 'tollwick/plain-hearth', 'ferrywright/sheartop']],
  ['HEARTH', ['emberlow/hearth', 'tollwick/plain-hearth']],
  ['old hea', ['tollwick/plain-hearth']],
  ['hearth toll', ['tollwick/plain-hearth']],
  ['lantern hearth', []],
])('for %j stand %j', (typed, found) => {
  expect(ids(typed)).toEqual(found);
});

it('no more are shown than there is room for, and all are counted', () => {
  expect(matchingChoices(choices, 'h', 1)).toMatchObject({
    shown: [{ id: 'emberlow/hearth' }],
    count: 4 - 1,
  });
  const many = Array.from({ length: 9000 }, (_, number) => ({
    id: `maker/no-${number}`,
    name: `No. ${number}`,
  }));
  expect(matchingChoices(many, 'no 8999', 30)).toEqual({ shown: [many[8999]], count: 1 });
});
