import { describe, expect, it } from 'vitest';
import { comparePairings } from '../../../src/decisions/compare/compare-pairings.ts';
import { problemLine } from '../../../src/text/problem-text.ts';
import { compared, demo, lantern, skiff, steeple, withJob, withMachine } from './demo-comparison.ts';

const total = (parts: readonly { readonly time: number }[]) => parts.reduce((sum, { time }) => sum + time, 0);
const faultOf = (request: Partial<Parameters<typeof comparePairings>[1]>) => {
  const result = comparePairings(demo, {
    job: 'mask-rack',
    policy: 'workshop',
    pairings: [lantern],
    ...request,
  });
  if (result.ok) throw new Error('It was compared.');
  return result.error;
};

describe('time', () => {
  it('is spent under one limiter or another to the last second', () => {
    for (const estimate of compared({ pairings: [lantern, steeple, skiff] }).estimates) {
      expect(total(estimate.limiters)).toBeCloseTo(estimate.time, 6);
    }
  });

  it('is that of the features and the changes of layer where no layer waits', () => {
    const [estimate] = compared({ pairings: [lantern] }).estimates;
    expect(estimate!.limiters.map(({ limiter }) => limiter)).not.toContain('cooling');
    expect(estimate!.betweenLayers).toBeCloseTo(214 * 0.45, 9);
    expect(total(estimate!.features) + 214 * 0.45).toBeCloseTo(estimate!.time, 6);
  });

  it('is limited by cooling where layers are done too early', () => {
    const { features } = demo.job.get('mask-rack')!.data;
    const registry = withJob('mask-rack', { features: { infill: features.infill! }, layers: 600 });
    const [estimate] = compared({ pairings: [steeple] }, registry).estimates;
    expect(estimate!.limiters[0]!.limiter).toBe('cooling');
    // 600 layers of the 4 s that the filament asks for, and 599 changes of layer of 0.35 s.
    expect(estimate!.time).toBeCloseTo(600 * 4 + 599 * 0.35, 6);
  });

  it('saved is counted against the first pairing', () => {
    const { estimates } = compared({ pairings: [lantern, steeple] });
    expect(estimates[0]!.saved).toBeNull();
    expect(estimates[1]!.saved!.time).toBeCloseTo(estimates[0]!.time - estimates[1]!.time, 9);
    expect(estimates[1]!.saved!.share).toBeCloseTo(estimates[1]!.saved!.time / estimates[0]!.time, 9);
  });

  it('does not count a change of layer that nobody has stated, and says so', () => {
    const { layerChangeTime: _, ...rest } = demo.machine.get('brackwater/lantern')!.data;
    const profile = { ...demo.machine.get('brackwater/lantern')!, data: rest };
    const registry = { ...demo, machine: new Map(demo.machine).set('brackwater/lantern', profile) };
    const [without] = compared({ pairings: [lantern] }, registry).estimates;
    const [counted] = compared({ pairings: [lantern] }).estimates;
    expect(counted!.time - without!.time).toBeCloseTo(214 * 0.45, 6);
    expect(without!.warnings.join()).toContain('the change of layer');
  });
});

describe('speed', () => {
  it('reached lies below the commanded one where the segments are short', () => {
    const travel = compared({ pairings: [steeple] }).estimates[0]!.features.find(
      ({ feature }) => feature === 'travel',
    )!;
    expect(travel.commandedSpeed).toBe(690);
    // A stop-to-stop move of 19 mm at 18 500 mm/s², of which the policy takes 80 % because it is only claimed.
    expect(travel.peakSpeed).toBeCloseTo(Math.sqrt(0.8 * 18_500 * 19), 6);
    expect(travel.limiter).toBe('motion');
  });

  it('follows the beads of the job rather than those of a table', () => {
    const { features } = demo.job.get('mask-rack')!.data;
    const wide = { ...features.infill!, lineWidth: 0.9 };
    const registry = withJob('mask-rack', { features: { ...features, infill: wide } });
    const commanded = (given: typeof demo) =>
      compared({ pairings: [lantern] }, given).estimates[0]!.features.find(
        ({ feature }) => feature === 'infill',
      )!.commandedSpeed;
    expect(commanded(registry)).toBeLessThan(0.6 * commanded(demo));
  });
});

describe('money', () => {
  it('for a saved hour is the difference of the prices over the hours saved in all jobs', () => {
    const [, estimate] = compared({ jobs: 2000 }).estimates;
    const hours = (2000 * estimate!.saved!.time) / 3600;
    expect(estimate!.priceDifference).toEqual({ amount: 4150 - 1580, currency: 'EUR' });
    expect(estimate!.savedHourPrice!.amount).toBeCloseTo((4150 - 1580) / hours, 9);
  });

  it('is not guessed without a number of jobs, without time saved or across currencies', () => {
    const savedHour = (...given: Parameters<typeof compared>) =>
      compared(...given).estimates[1]!.savedHourPrice;
    const dollars = withMachine('tollwick/steeple', {
      price: [{ value: { amount: 4150, currency: 'USD' }, basis: 'assumed' }],
    });
    expect(savedHour({})).toBeNull();
    expect(savedHour({ jobs: 2000, pairings: [lantern, skiff] })).toBeNull();
    expect(savedHour({ jobs: 2000 }, dollars)).toBeNull();
  });

  it('goes by a price that was given, as assumed', () => {
    const prices = { 'tollwick/steeple': { amount: 2000, currency: 'EUR' } };
    const [first, estimate] = compared({ jobs: 2000, prices }).estimates;
    expect(estimate!.price).toEqual({
      value: prices['tollwick/steeple'],
      basis: 'assumed',
      isSimulated: false,
    });
    expect(first!.price?.basis).toBe('claimed');
    expect(estimate!.priceDifference).toEqual({ amount: 2000 - 1580, currency: 'EUR' });
    expect(faultOf({ prices: { 'emberlow/hearth': { amount: 1, currency: 'EUR' } } })).toMatchObject({
      code: 'otherMachine',
      message: 'A price is given for emberlow/hearth, which no pairing is on',
    });
  });

  it('is earned back after as many jobs as save hours of that worth', () => {
    const hourValue = { amount: 38, currency: 'EUR' };
    const [, estimate] = compared({ hourValue }).estimates;
    const worth = (estimate!.saved!.time / 3600) * 38;
    expect(estimate!.paysAfterJobs).toBe(Math.ceil((4150 - 1580) / worth));
  });

  it('is not said to be earned back where nothing is saved, or in another currency', () => {
    const paysAfter = (...given: Parameters<typeof compared>) =>
      compared(...given).estimates[1]!.paysAfterJobs;
    const hourValue = { amount: 38, currency: 'EUR' };
    expect(paysAfter({})).toBeNull();
    expect(paysAfter({ hourValue, pairings: [lantern, skiff] })).toBeNull();
    expect(paysAfter({ hourValue: { ...hourValue, currency: 'USD' } })).toBeNull();
  });

  it.each([
    ['a price that is unknown', { price: [] }, {}, 'priceUnknown'],
    [
      'prices in two currencies',
      { price: [{ value: { amount: 4150, currency: 'USD' }, basis: 'assumed' as const }] },
      {},
      'pricesDiffer',
    ],
    ['a worth in another currency', {}, { hourValue: { amount: 38, currency: 'USD' } }, 'otherCurrency'],
    ['a machine that saves no time', {}, { pairings: [lantern, skiff] }, 'savesNothing'],
    [
      'a machine that is not dearer',
      { price: [{ value: { amount: 1, currency: 'EUR' }, basis: 'assumed' as const }] },
      {},
      'notDearer',
    ],
  ])('says why there is no figure for %s', (_, figures, request, gap) => {
    const hourValue = { amount: 38, currency: 'EUR' };
    const registry = withMachine('tollwick/steeple', figures);
    const [first, estimate] = compared({ jobs: 2000, hourValue, ...request }, registry).estimates;
    expect(estimate).toMatchObject({ paysAfterJobs: null, paysGap: gap });
    if (gap !== 'otherCurrency') expect(estimate).toMatchObject({ savedHourPrice: null, savedHourGap: gap });
    expect(first).toMatchObject({ paysGap: null, savedHourGap: null });
  });

  describe('for power, wear and labour', () => {
    const euros = (amount: number) => ({ amount, currency: 'EUR' });
    const hourlyCosts = { power: euros(0.06), wear: euros(0.4), labour: euros(3) };

    it('grows with the time of the job', () => {
      for (const { time, runningCost } of compared({ hourlyCosts }).estimates)
        expect(runningCost?.amount).toBeCloseTo((time / 3600) * 3.46, 9);
      expect(compared({}).estimates[0]?.runningCost).toBeNull();
    });

    it('is saved with each hour, which makes the saved hour cheaper by as much', () => {
      const [, without] = compared({ jobs: 2000 }).estimates;
      const [, counted] = compared({ jobs: 2000, hourlyCosts }).estimates;
      expect(without!.savedHourPrice!.amount - counted!.savedHourPrice!.amount).toBeCloseTo(3.46, 9);
    });

    it('adds to what an hour is worth', () => {
      const [, estimate] = compared({ hourValue: euros(38), hourlyCosts }).estimates;
      const worth = (estimate!.saved!.time / 3600) * 41.46;
      expect(estimate!.paysAfterJobs).toBe(Math.ceil((4150 - 1580) / worth));
    });

    it('may pay for the machine alone', () => {
      const [, estimate] = compared({ jobs: 2000, hourlyCosts: { labour: euros(30) } }).estimates;
      expect(estimate).toMatchObject({ savedHourPrice: null, savedHourGap: 'paidAlready' });
      expect(estimate!.paysAfterJobs).toBeGreaterThan(0);
    });

    it('is refused in two currencies', () => {
      const { code, message } = faultOf({
        hourlyCosts: { power: euros(1), wear: { amount: 1, currency: 'USD' } },
      });
      expect({ code, message }).toEqual({
        code: 'severalCurrencies',
        message: 'The costs of an hour are in EUR and USD',
      });
    });
  });

  it('for filament follows mass, price and spool', () => {
    const [{ mass, filamentCost }] = compared({}).estimates as [ReturnType<typeof compared>['estimates'][0]];
    expect(filamentCost!.value.amount).toBeCloseTo((24 * mass!.value) / 1000, 9);
  });
});

describe('the weakest number', () => {
  it('is named with its basis', () => {
    expect(compared({}).estimates[0]!.weakest).toEqual({
      basis: 'assumed',
      of: 'quality bound of outerContour',
      isSimulated: false,
    });
  });
});

it('names the trials and profiles that are not real', () => {
  const { origin, estimates } = compared({ pairings: [lantern] });
  expect(origin.invented.map(({ kind, id }) => `${kind} ${id}`)).toEqual([
    'filament ashgrove/stagecraft-pla',
    'job mask-rack',
    'machine brackwater/lantern',
    'policy workshop',
  ]);
  // The ladder behind the melt limit, the reference prints, and the sound measurement.
  expect(origin.simulated).toEqual(
    expect.arrayContaining(['lantern-mask-rack', 'lantern-prop-bottle', 'lantern-sound']),
  );
  expect(estimates[0]!.soundLevel).toMatchObject({ basis: 'measured', isSimulated: true });
  expect(estimates[0]!.price).toMatchObject({ basis: 'claimed', isSimulated: false });
});

it('holds the quirks of each pairing', () => {
  const [, estimate] = compared({}).estimates;
  expect(estimate!.quirks.map(({ of }) => of.id)).toContain('tollwick/steeple');
});

describe('the answer', () => {
  it('is one sentence that names the fastest, what it saves, what limits it and whether its speed is reached', () => {
    const { answer } = compared({ pairings: [lantern, steeple, skiff] });
    expect(answer).toMatch(
      /^tollwick\/steeple:hs-0\.4\+ashgrove\/stagecraft-pla saves \d\.\d min \(\d\d %\) of the \d\d\.\d min of brackwater\/lantern:\S+; it is limited by motion for \d+ % of its time and by house caps for \d+ %, and its claimed top speed of 690 mm\/s is never reached: it goes up to \d+ mm\/s while printing and \d+ mm\/s on travel moves\.$/,
    );
  });

  it('says when no other pairing saves time', () => {
    expect(compared({ pairings: [steeple, skiff] }).answer).toMatch(
      /^tollwick\/steeple:hs-0\.4\+\S+ is the fastest of all with \d\d\.\d min; it is limited by /,
    );
  });

  it('says when the top speed is a speed of travel only', () => {
    const { features } = demo.job.get('mask-rack')!.data;
    const far = { ...features, travel: { pathLength: 20_000, meanSegment: 60 } };
    expect(compared({ pairings: [lantern] }, withJob('mask-rack', { features: far })).answer).toContain(
      'is reached on travel moves only',
    );
  });
});

describe('a job whose figures give no time is refused in words:', () => {
  const infill = demo.job.get('mask-rack')!.data.features.infill!;

  it.each([
    ['segments of no length', { features: { infill: { ...infill, meanSegment: 0 } } }],
    ['a negative segment', { features: { infill: { ...infill, meanSegment: -1 } } }],
    ['a negative tolerance', { corners: { deflection: 90, tolerance: -1 } }],
  ])('%s', (_, figures) => {
    const result = comparePairings(withJob('mask-rack', figures), {
      job: 'mask-rack',
      policy: 'workshop',
      pairings: [lantern],
    });
    expect(result).toMatchObject({
      ok: false,
      error: { code: 'noTime', message: 'No time follows for the job mask-rack' },
    });
  });
});

describe('what cannot be compared is said with what would do:', () => {
  it.each([
    [{ job: 'mask-rak' }, 'unknownJob', 'There is no job "mask-rak". Did you mean "mask-rack"?'],
    [{ policy: 'workshp' }, 'unknownPolicy', 'There is no policy "workshp". Did you mean "workshop"?'],
    [
      { pairings: [{ ...lantern, machine: 'brackwater/lanterm' }] },
      'unknownMachine',
      'There is no machine "brackwater/lanterm". Did you mean "brackwater/lantern"?',
    ],
    [
      { pairings: [{ ...lantern, nozzle: 'hs-0.5' }] },
      'unknownNozzle',
      'There is no nozzle "hs-0.5". Did you mean "hs-0.4"?',
    ],
    [{ pairings: [] }, 'noPairing', 'There is nothing to compare. Name at least one pairing.'],
  ])('%j', (request, code, sentences) => {
    const problem = faultOf(request);
    expect(problem.code).toBe(code);
    expect(problemLine(problem)).toBe(sentences);
  });
});

it('says how well the time model met the reference prints of each machine', () => {
  const hearth = { machine: 'emberlow/hearth', nozzle: 'hs-0.6', filament: 'quillmere/rigging-abs' };
  const checks = compared({ pairings: [lantern, hearth] }).estimates.map(({ modelCheck }) => modelCheck);
  expect(checks[0]!.prints).toBe(2);
  expect(checks[0]!.largestError).toBeGreaterThan(0);
  expect(checks[0]!.largestError).toBeLessThan(0.05);
  expect(checks[1]).toBeNull();
});

it('warns of beads that the nozzle cannot lay well', () => {
  const [estimate] = compared({ pairings: [{ ...steeple, nozzle: 'hs-0.8' }] }).estimates;
  expect(estimate!.warnings).toEqual([
    'Lines of 0.45 mm are narrower than the bore of nozzle hs-0.8, 0.8 mm.',
  ]);
});
