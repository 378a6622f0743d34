import { describe, expect, it } from 'vitest';
import { answerProblem } from '../../src/scaffold/answer-problem.ts';
import { openKeys, placeOfWay, valueOfText, withAnswer } from '../../src/scaffold/answers.ts';
import { fieldsOf } from '../../src/scaffold/field.ts';
import { questionsOf } from '../../src/scaffold/questions.ts';
import { schemas } from './schemas.ts';

const machine = fieldsOf('machine.schema.json', schemas);
const filament = fieldsOf('filament.schema.json', schemas);

function valueAtWay(way: string, text: string, sheet: string | null = null): unknown {
  const fields = way in { polymer: 0, density: 0, colours: 0 } ? filament : machine;
  return valueOfText(placeOfWay(fields, way)!.field, text, sheet);
}

describe('a way of keys', () => {
  it('goes to the first entry of a list that is not numbered', () => {
    expect(placeOfWay(machine, 'hotEnds.nozzles.id')?.path).toEqual(['hotEnds', 0, 'nozzles', 0, 'id']);
    expect(placeOfWay(machine, 'hotEnds.0.nozzles.1.id')?.path).toEqual(['hotEnds', 0, 'nozzles', 1, 'id']);
  });

  it('to nowhere is null', () => {
    expect(placeOfWay(machine, 'hotEnds.colour')).toBeNull();
  });
});

describe('a text becomes', () => {
  it('a statement that the sheet claims', () => {
    expect(valueAtWay('density', '1.24 g/cm3', 'a-sheet')).toEqual([
      { value: '1.24 g/cm3', basis: 'claimed', source: 'a-sheet' },
    ]);
  });

  it('true or false, a list parted by commas, a part of a document, or itself', () => {
    expect(valueAtWay('chamber.heated', 'false')).toBe(false);
    expect(valueAtWay('colours', 'black, ivory')).toEqual(['black', 'ivory']);
    expect(valueAtWay('envelope', '{x: 1 m}')).toEqual({ x: '1 m' });
    expect(valueAtWay('polymer', ' PLA ')).toBe('PLA');
  });

  it('itself where it only looks like a part of a document', () => {
    expect(valueAtWay('density', '[1.24', null)).toEqual([{ value: '[1.24', basis: 'claimed' }]);
  });
});

describe('an answer', () => {
  it('is put at its place and leaves the others alone', () => {
    const one = withAnswer({ id: 'a/b' }, ['envelope', 'x'], '1 m');
    expect(withAnswer(one, ['envelope', 'y'], '2 m')).toEqual({
      id: 'a/b',
      envelope: { x: '1 m', y: '2 m' },
    });
  });

  it('under a key of every object stays an answer', () => {
    const answers = withAnswer({}, ['__proto__', 'x'], 1);
    expect(Object.keys(answers)).toEqual(['__proto__']);
    expect({}).not.toHaveProperty('x');
  });

  it('is judged at its place with what would do', () => {
    expect(answerProblem('filament', ['diameter'], '1.75')).toMatchObject({
      code: 'units/missing-unit',
      help: expect.stringContaining('1.75 mm'),
    });
    expect(answerProblem('filament', ['diameter'], '1.75 mm')).toBeNull();
    expect(answerProblem('machine', ['layout'], 'gantri')).toMatchObject({
      code: 'shape/not-a-choice',
      help: 'Did you mean "gantry"?',
    });
  });

  it('is not blamed for what is still open around it', () => {
    expect(answerProblem('machine', ['envelope', 'x'], '300 mm')).toBeNull();
  });
});

describe('what is open', () => {
  it('is named by its keys', () => {
    const open = openKeys(machine, { kind: 'machine', envelope: { x: '1 m' }, hotEnds: [{ id: 'main' }] });
    expect(open).toEqual(expect.arrayContaining(['envelope.y', 'hotEnds.filamentDiameter', 'chamber']));
    expect(open).not.toContain('envelope.x');
  });

  it('is asked for in the order of the schema, without what has been answered', () => {
    const asked = questionsOf(filament, { kind: 'filament', id: 'a/b', version: '1.0.0' });
    expect(asked.flatMap(({ questions }) => questions.map(({ way }) => way))).toEqual([
      ...['name', 'maker', 'sheet', 'polymer', 'designation', 'diameter', 'density'],
      ...['nozzleTemperature', 'bedTemperature'],
    ]);
  });

  it('is offered, not asked, where one key stands for many values', () => {
    const offers = questionsOf(fieldsOf('policy.schema.json', schemas), {}).map(({ offer }) => offer?.key);
    expect(offers).toContain('fractions');
  });
});
