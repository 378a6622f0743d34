/** @module-tag long */
import { describe, expect, it } from 'vitest';
import { checked, runCommand } from '../run-command.ts';
import { lastDay, reason, staleEvidence } from '../stale-evidence.ts';

const pairing = ['plumstead/wren', 'oakhollow/daisy-pla'];
const dayAfter = ['--today', '2027-01-01'];
const accepted = `rests on old evidence, acknowledged until ${lastDay} (${reason})`;

/** Text without the breaks of its lines. */
function unwrapped(text: string): string {
  return text.replace(/\n\s+/g, ' ');
}

/** What a command says of old evidence that the trials acknowledge; `open` says of some that they do not. */
async function said(command: readonly string[], ...options: string[]): Promise<string> {
  return (await runCommand(staleEvidence({ acknowledged: true }).cwd, [...command, ...options])).out;
}

async function open(command: readonly string[]): Promise<string> {
  return (await runCommand(staleEvidence({ acknowledged: false }).cwd, command)).out;
}

describe('old evidence that its trials acknowledge', () => {
  it('is no finding of `check` up to the last day', async () => {
    const { cwd } = staleEvidence({ acknowledged: true });
    expect((await checked(cwd)).findings).toEqual([]);
    expect((await checked(cwd, ...dayAfter)).findings.map(({ rule }) => rule)).toEqual([
      'evidence/stale-firmware',
      'acknowledgement/expired',
      'evidence/stale-firmware',
      'acknowledgement/expired',
    ]);
  });

  it('is told by `tables` with reason and date, and flagged as acknowledged', async () => {
    const command = ['tables', ...pairing, '--format', 'markdown'];
    const table = await said(command);
    expect(table).toContain(`A limit of this table ${accepted}. The trial was run with firmware 1.1.0`);
    expect(table).toMatch(/^\| infill .*\| acknowledged simulated *\|$/m);
    expect(table).not.toContain('check');
    for (const text of [await said(command, ...dayAfter), await open(command)]) {
      expect(text).toContain(
        'A limit of this table rests on old evidence. The trial was run with firmware 1.1.0',
      );
      expect(text).toMatch(/^\| infill .*\| stale simulated *\|$/m);
    }
  });

  it('is told in every form of a table', async () => {
    const command = ['tables', ...pairing, '--format'];
    expect(await said([...command, 'csv'])).toMatch(/^infill,.*,acknowledged simulated,/m);
    const { warnings, rows } = JSON.parse(await said([...command, 'json']));
    expect(warnings.join()).toContain(accepted);
    expect(rows[0].flags).toContain('acknowledged');
    const page = await said([...command, 'html']);
    expect(page).toContain(accepted);
    expect(page).toContain('was accepted by a reviewer until a date');
  });

  it('is no limit of a pairing for `match`, which tells it all the same', async () => {
    for (const command of [['match'], ['match', 'oakhollow/daisy-pla']]) {
      const text = await said(command);
      expect(text).toContain('oakhollow/daisy-pla on plumstead/wren: suits\n');
      expect(unwrapped(text)).toContain(
        ` + the measured flow ${accepted}: The trial was run with firmware 1.1.0`,
      );
      expect(await said(command, '--format', 'markdown')).toContain(
        'rests on old evidence, acknowledged until',
      );
      for (const refused of [await said(command, ...dayAfter), await open(command)]) {
        expect(refused).toContain('oakhollow/daisy-pla on plumstead/wren: suits with limits\n');
        expect(unwrapped(refused)).toContain(
          ' ~ the measured flow rests on old evidence: The trial was run with firmware 1.1.0',
        );
      }
    }
  });

  it('is told by `claims` beside the evidence', async () => {
    const command = ['claims', 'plumstead/wren'];
    expect(unwrapped(await said(command))).toMatch(
      new RegExp(
        `trial wren-daisy-pla-230, .*; ${accepted.replace(/[()]/g, '\\$&')}: The trial was run with firmware 1.1.0`,
      ),
    );
    expect(await said(command, '--format', 'markdown')).toContain('rests on old evidence, acknowledged');
    for (const text of [await said(command, ...dayAfter), await open(command)])
      expect(unwrapped(text)).toMatch(
        /trial wren-daisy-pla-230, .*; rests on old evidence: The trial was run with firmware 1.1.0/,
      );
  });

  it('comes as JSON with rule, reason and date', async () => {
    const fault = {
      code: 'stale',
      rule: 'evidence/stale-firmware',
      acknowledged: { reason, until: lastDay },
    };
    const { matches } = JSON.parse(await said(['match', 'oakhollow/daisy-pla', '--format', 'json']));
    expect(matches[0].reasons.filter((each: object) => 'fault' in each)).toMatchObject([
      { aspect: 'flow', verdict: 'suits', fault },
    ]);
    const { claims } = JSON.parse(await said(['claims', 'plumstead/wren', '--format', 'json']));
    expect(claims[0].evidence[0].faults).toMatchObject([fault]);
  });
});
