import { describe, expect, it } from 'vitest';
import { runCommand, spawnCommand, unwrapped } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

const pairings = ['plumstead/wren+oakhollow/daisy-pla', 'plumstead/yaffle:hs-0.6+oakhollow/daisy-pla'];
const args = ['compare', 'hook', ...pairings, '--jobs', '300'];

/** The sample registry with a second, faster machine that states what the first one leaves unknown. */
function twoMachines(): SampleRegistry {
  const registry = sampleRegistry();
  const faster = registry
    .read('machines/plumstead/wren.yaml')
    .replace('id: plumstead/wren', 'id: plumstead/yaffle')
    .replace('acceleration:', `${more}\nacceleration:`)
    .replace('32 mm3/s', '95 mm3/s');
  registry.write('machines/plumstead/yaffle.yaml', faster);
  return registry;
}

const more = `layerChangeTime:
  - {value: 0.3 s, basis: assumed, reason: Invented for this test}
travelPause:
  - {value: 0.04 s, basis: assumed, reason: Invented for this test}`;

// `npx vitest run tests/commands/compare.test.ts --update` writes them again; read the difference.
describe('the golden comparison', () => {
  it.each([
    ['text', 'txt'],
    ['markdown', 'md'],
    ['json', 'json'],
  ])('as %s is written again byte for byte', async (format, ending) => {
    const { status, out, err } = await runCommand(twoMachines().cwd, [...args, '--format', format]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    await expect(out).toMatchFileSnapshot(`../goldens/hook-comparison.${ending}`);
  });

  it('is the same in another time zone and locale', { tags: 'long' }, async () => {
    const env = { TZ: 'Pacific/Kiritimati', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' };
    const { out } = spawnCommand(twoMachines().cwd, args, env);
    await expect(out).toMatchFileSnapshot('../goldens/hook-comparison.txt');
  });
});

describe('what cannot be compared ends with status 2 and nothing on standard output:', () => {
  it.each([
    [['hok', ...pairings], 'Did you mean "hook"?'],
    [['hook', 'plumstead/wrem+oakhollow/daisy-pla'], 'Did you mean "plumstead/wren"?'],
    [['hook', 'plumstead/wren+oakhollow/daisi-pla'], 'Did you mean "oakhollow/daisy-pla"?'],
    [['hook', 'plumstead/wren'], 'Write MACHINE:NOZZLE+FILAMENT'],
    [['hook', ...pairings, '--policy', 'hause'], 'Did you mean "house"?'],
    [['hook', ...pairings, '--jobs', '0'], 'write a whole number'],
    [['hook', ...pairings, '--hour-value', '38'], '38 has no unit'],
    [['hook', ...pairings, '--hour-value', '0 EUR'], 'worth more than 0'],
    [['hook', ...pairings, '--wear', '0 EUR'], 'cost more than 0'],
    [['hook', ...pairings, '--wear', '1 EUR', '--power', '1 USD'], 'are in USD and EUR'],
  ])('%j', async (given, message) => {
    const { status, out, err } = await runCommand(sampleRegistry().cwd, ['compare', ...given]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(message);
  });
});

describe('money', () => {
  const priced = (...given: string[]) => {
    const registry = twoMachines();
    for (const [machine, price] of [
      ['wren', 900],
      ['yaffle', 1900],
    ] as const)
      registry.edit(
        `machines/plumstead/${machine}.yaml`,
        '\nnotice:',
        `\nprice:\n  - {value: ${price} EUR, basis: claimed, source: plumstead-wren-sheet}\nnotice:`,
      );
    return runCommand(registry.cwd, ['compare', 'hook', ...pairings, ...given]);
  };

  it('in another currency than the prices gives no figure, and says why', async () => {
    const { out } = await priced('--hour-value', '38 USD');
    expect(out).toMatch(
      /\npays, an hour at 38\.00 USD .*(?:no figure: the machine prices are in EUR|never: )/,
    );
  });

  it('names what enters the figures and what they leave out', async () => {
    expect(unwrapped((await priced('--hour-value', '38 EUR')).out)).toContain(
      'without filament, power, wear and labour.',
    );
    const { out } = await priced('--wear', '0.40 EUR', '--jobs', '300');
    expect(unwrapped(out)).toContain('with wear, without filament, power and labour.');
    expect(out).toMatch(/\nwear +0\.\d\d EUR +0\.\d\d EUR\n/);
  });
});

it('shows the name of a job without what it could do to Markdown', async () => {
  const registry = sampleRegistry();
  registry.edit('jobs/hook.yaml', 'name: Coat hook', 'name: "Coat | <b>hook</b>"');
  const { out } = await runCommand(registry.cwd, ['compare', 'hook', pairings[0]!, '--format', 'markdown']);
  expect(out).not.toContain('<b>');
  expect(out).toContain('Coat \\| \\<b\\>hook');
});
