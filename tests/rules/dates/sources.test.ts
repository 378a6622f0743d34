import { type NearMiss, type Slip, tables, testCases } from '../edited-sample.ts';

const slips: readonly Slip[] = [
  {
    slip: 'a thirtieth of February',
    edits: [
      { in: tables, from: 'issued: {date-parts: [[2025]]}', to: 'issued: {date-parts: [[2025, 2, 30]]}' },
    ],
    found: [`error dates/calendar ${tables} | issued: {date-parts: [»[2025, 2, 30]]}`],
  },
  {
    slip: 'a source from the future',
    edits: [{ in: tables, from: 'issued: {date-parts: [[2025]]}', to: 'issued: {date-parts: [[2052]]}' }],
    found: [`error dates/source-order ${tables} | issued: {date-parts: [»[2052]]}`],
  },
  {
    slip: 'a source that was read before it was issued',
    edits: [
      {
        in: tables,
        from: 'issued: {date-parts: [[2025]]}',
        to: 'issued: {date-parts: [[2025, 6]]}\naccessed: {date-parts: [[2024, 7, 1]]}',
      },
    ],
    found: [`error dates/source-order ${tables} | accessed: {date-parts: [»[2024, 7, 1]]}`],
  },
];

const nearMisses: readonly NearMiss[] = [
  {
    nearMiss: 'a leap day',
    edits: [
      { in: tables, from: 'issued: {date-parts: [[2025]]}', to: 'issued: {date-parts: [[2024, 2, 29]]}' },
    ],
  },
  {
    nearMiss: 'a source that was read in the month in which it was issued',
    edits: [
      {
        in: tables,
        from: 'issued: {date-parts: [[2025]]}',
        to: 'issued: {date-parts: [[2025, 6]]}\naccessed: {date-parts: [[2025, 6, 1]]}',
      },
    ],
  },
];

testCases({ slips, nearMisses });
