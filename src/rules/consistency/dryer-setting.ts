import type { ProfileRule } from '../engine/rule.ts';

const keyOf = { fixed: 'temperature', adjustable: 'range' } as const;
const otherKeyOf = { fixed: 'range', adjustable: 'temperature' } as const;

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'error',
  statement:
    'A fixed dryer states a temperature and no range; an adjustable one states a range and no temperature.',
  rationale: 'Without it nobody can tell which spools would fuse in the dryer.',
  source: 'Format of the registry: machine, dryer.',
  example: {
    kind: 'machine',
    bad: 'dryer: {setting: fixed, range: 40..70 Cel}',
    good: 'dryer: {setting: adjustable, range: 40..70 Cel}',
  },
  *check(profile) {
    const { dryer } = profile.data;
    if (dryer === undefined) return;
    const [wanted, other] = [keyOf[dryer.setting], otherKeyOf[dryer.setting]];
    if (dryer[wanted] !== undefined && dryer[other] === undefined) return;
    yield {
      path: ['dryer', 'setting'],
      part: 'value',
      message: `The dryer is ${dryer.setting}, so it needs a ${wanted} and no ${other}`,
      found: dryer.setting,
      allowed: 'fixed with a temperature, or adjustable with a range',
      help: `Write \`${wanted}:\` and leave \`${other}:\` out, or correct the setting.`,
    };
  },
};
