import { describe, expect, it, test } from 'vitest';
import { parse } from 'yaml';
import { checkShape } from '../../src/registry/form/check-shape.ts';
import { kinds } from '../../src/registry/kind.ts';
import { fieldsOf } from '../../src/scaffold/field.ts';
import { formatNewProfile } from '../../src/scaffold/scaffold.ts';
import { schemas } from './schemas.ts';
import { uncommented } from './uncommented.ts';

const text = (kind: (typeof kinds)[number], answers = {}) =>
  formatNewProfile({ kind, answers: { kind, ...answers }, schemaPath: `../${kind}.schema.json` }, schemas);

describe('a scaffold', () => {
  it('names its schema in the first line, for editors', () => {
    expect(text('job').split('\n')[0]).toBe('# yaml-language-server: $schema=../job.schema.json');
  });

  it('writes answers as values and everything else as comments', () => {
    expect(parse(text('filament', { polymer: 'PLA' }))).toEqual({ kind: 'filament', polymer: 'PLA' });
  });

  it('says of each key what it means, whether it must be there and what may stand there', () => {
    expect(text('machine')).toContain(
      [
        '# Mandatory: how the axes move: the bed along one of them, a gantry above a bed that only lifts,',
        '# parallel arms, or a belt that carries the part away, so that its length is only limited by the',
        '# room behind the machine.',
        '# One of: movingBed, gantry, parallelArm, belt.',
        '#layout: gantry',
      ].join('\n'),
    );
  });

  it('keeps a group open for what is not answered', () => {
    const lines = text('machine', { envelope: { x: '300 mm' } }).split('\n');
    expect(lines).toContain('  x: 300 mm');
    expect(lines).toContain('  #y: 310 mm');
  });

  it('quotes what YAML would take for something else', () => {
    expect(parse(text('job', { name: '1e3', notice: 'two\nlines: # no comment' }))).toMatchObject({
      name: '1e3',
      notice: 'two\nlines: # no comment',
    });
  });

  it('has short lines but for values', () => {
    const long = text('machine')
      .split('\n')
      .filter((line) => /^[#\s]*# /.test(line) && line.length > 100);
    expect(long).toEqual([]);
  });
});

describe('with every example filled in', () => {
  test.each(kinds)('a %s has every key of its schema', (kind) => {
    const keys = Object.keys(parse(uncommented(text(kind))));
    expect(keys).toEqual(fieldsOf(`${kind}.schema.json`, schemas).map(({ key }) => key));
  });

  test.each(kinds)('a %s has the form that its schema wants', (kind) => {
    expect(checkShape(kind, parse(uncommented(text(kind)))).hits).toEqual([]);
  });
});
