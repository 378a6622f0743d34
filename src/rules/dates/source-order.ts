import type { Hit } from '../../registry/hit.ts';
import { isCalendarDate, isoText, type SourceDate, sourceDates } from '../engine/date-parts.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'source'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['source'],
  severity: 'error',
  statement: 'A source was issued before it was read, and read before today.',
  rationale: 'A mistyped year sends readers to an edition that does not exist.',
  source: 'ISO 8601: dates of the same precision compare as text.',
  example: {
    kind: 'source',
    bad: 'accessed: {date-parts: [[2052, 4, 1]]}',
    good: 'accessed: {date-parts: [[2025, 4, 1]]}',
  },
  *check(profile, { today }) {
    const dates = sourceDates(profile).filter(({ parts }) => isCalendarDate(parts));
    const hit =
      dates.map((date) => futureHit(date, today)).find((found) => found !== null) ?? orderHit(dates);
    if (hit !== null) yield hit;
  },
};

function futureHit({ name, path, parts }: SourceDate, today: string): Hit | null {
  const text = isoText(parts);
  if (text <= today.slice(0, text.length)) return null;
  return {
    path,
    part: 'value',
    message: `The source was ${name} on ${text}, which is in the future`,
    found: text,
    allowed: `up to ${today}`,
    help: 'Correct the date; usually the year is mistyped.',
  };
}

function orderHit(dates: readonly SourceDate[]): Hit | null {
  const [issued, accessed] = (['issued', 'accessed'] as const).map((name) =>
    dates.find((date) => date.name === name),
  );
  if (issued === undefined || accessed === undefined) return null;
  const common = Math.min(issued.parts.length, accessed.parts.length);
  const [first, then] = [isoText(issued.parts.slice(0, common)), isoText(accessed.parts.slice(0, common))];
  if (first <= then) return null;
  return {
    path: accessed.path,
    part: 'value',
    message: `The source was read on ${isoText(accessed.parts)}, before it was issued on ${isoText(issued.parts)}`,
    found: isoText(accessed.parts),
    allowed: `from ${isoText(issued.parts)}`,
    help: 'Correct one of the two dates, or name the edition that was read.',
  };
}
