import { PassThrough } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { terminalAsker } from '../../src/host/terminal-asker.ts';

const enter = '\r';
const down = '\u001b[B';
const interrupt = '\u0003';

/** Asks with keys that are typed once the question stands. */
async function typed<Given>(
  ask: (asker: ReturnType<typeof terminalAsker>) => Promise<Given>,
  keys: readonly string[],
): Promise<{ readonly given: Given; readonly shown: string }> {
  const [input, output] = [new PassThrough(), new PassThrough()];
  let shown = '';
  output.on('data', (chunk) => {
    shown += String(chunk);
  });
  const given = ask(terminalAsker(input, output));
  for (const key of keys) {
    await new Promise((resolve) => setImmediate(resolve));
    input.write(key);
  }
  return { given: await given, shown };
}

const question = {
  message: 'diameter: Nominal diameter',
  example: '1.75 mm',
  suggestion: '',
  problem: (text: string) => (text.endsWith('mm') ? null : 'write it in mm'),
};

describe('at a terminal', () => {
  it('a text is asked for again until it will do', async () => {
    const { given, shown } = await typed((asker) => asker.text(question), ['2', enter, 'mm', enter]);
    expect(given).toEqual({ text: '2mm' });
    expect(shown).toContain('write it in mm');
    expect(shown).toContain('1.75 mm');
  });

  it('Enter leaves a text open', async () => {
    expect((await typed((asker) => asker.text(question), [enter])).given).toEqual({ text: null });
  });

  it('a choice is made with the arrows', async () => {
    const choose = { message: 'layout', choices: ['movingBed', 'gantry'], open: 'leave open' };
    expect((await typed((asker) => asker.choose(choose), [down, enter])).given).toEqual({ text: 'gantry' });
    expect((await typed((asker) => asker.choose(choose), [down, down, enter])).given).toEqual({ text: null });
  });

  it('Ctrl-C stops every kind of question', async () => {
    const choose = { message: 'layout', choices: ['gantry'], open: null };
    expect((await typed((asker) => asker.text(question), [interrupt])).given).toBe('stopped');
    expect((await typed((asker) => asker.choose(choose), [interrupt])).given).toBe('stopped');
    expect((await typed((asker) => asker.confirm('more?'), [interrupt])).given).toBe('stopped');
  });
});
