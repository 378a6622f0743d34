import { expect, test } from 'vitest';
import { projectFolder } from '../../scripts/docs/documents.ts';
import { methodNames } from '../../src/bench/method-facts.ts';
import { runCommand } from '../run-command.ts';

const lantern = 'brackwater/lantern:hs-0.6+ashgrove/stagecraft-pla';
const steeple = 'tollwick/steeple:hs-0.4+ashgrove/stagecraft-pla';
const skiff = 'ferrywright/skiff+ashgrove/stagecraft-pla';

const commands: readonly (readonly string[])[] = [
  ['match'],
  ['match', 'quillmere/rigging-abs'],
  ['match', '--machine', 'emberlow/hearth'],
  ['claims', 'brackwater/lantern'],
  ['claims', 'emberlow/hearth'],
  ['claims', 'ferrywright/skiff'],
  ['compare', 'mask-rack', lantern, '--policy', 'workshop'],
  ['compare', 'mask-rack', lantern, steeple, skiff, '--policy', 'workshop', '--jobs', '2000'],
  ['compare', 'mask-rack', lantern, steeple, skiff, lantern, steeple, '--policy', 'workshop'],
  ['reduce', 'lantern-stagecraft-pla-230'],
  ['reduce', 'brackwater/lantern', 'ashgrove/stagecraft-pla', '--at', '235 Cel'],
  ...methodNames.map((method) => [
    'plan',
    'brackwater/lantern',
    'ashgrove/stagecraft-pla',
    '--method',
    method,
  ]),
];

test.each(commands.map((args) => [args.join(' '), args] as const))(
  '%s stays within 80 columns',
  async (_, args) => {
    const { status, out } = await runCommand(projectFolder, args);
    expect(status).toBe(0);
    expect(out.split('\n').filter((line) => [...line].length > 80)).toEqual([]);
  },
);
