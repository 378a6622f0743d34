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
  open: 'Enter alone: fill it in later',
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

  it('Enter alone leaves a text for later, and the question says so', async () => {
    const { given, shown } = await typed((asker) => asker.text(question), [enter]);
    expect(given).toEqual({ text: null });
    expect(shown.split(/\s+/).join(' ')).toContain('Enter alone: fill it in later');
  });

  it('Enter alone is no answer where there must be one', async () => {
    const asked = { ...question, open: null };
    const { given, shown } = await typed((asker) => asker.text(asked), [enter, '3 mm', enter]);
    expect(given).toEqual({ text: '3 mm' });
    expect(shown).toContain('It cannot do without an answer.');
  });

  it('an example stands in the question, and is not taken for the answer', async () => {
    const { given, shown } = await typed((asker) => asker.text(question), ['\t', enter]);
    expect(given).toEqual({ text: null });
    expect(shown).toContain('For example 1.75 mm.');
  });

  it('what is suggested stands in the line, and is taken by Enter', async () => {
    const suggested = { ...question, suggestion: '2.85 mm' };
    expect((await typed((asker) => asker.text(suggested), [enter])).given).toEqual({ text: '2.85 mm' });
  });

  it('typing into a list filters it', async () => {
    const choices = ['brackwater/lantern', 'emberlow/hearth', 'ferrywright/barge', 'ferrywright/skiff'];
    const choose = { message: 'machine', choices, open: 'another one' };
    const { given } = await typed((asker) => asker.choose(choose), ['s', 'K', 'i', enter]);
    expect(given).toEqual({ text: 'ferrywright/skiff' });
    const other = await typed((asker) => asker.choose(choose), [...'none of these', enter]);
    expect(other.given).toEqual({ text: null });
  });

  it('a choice is made with the arrows', async () => {
    const choose = { message: 'layout', choices: ['movingBed', 'gantry'], open: 'leave it out' };
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
