import { describe, expect, it } from 'vitest';
import type { ReducedResult, Reduction } from '../../../src/bench/reduction.ts';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { formatReductionAsJson } from '../../../src/report/reduction/reduction-as-json.ts';
import {
  type ReductionHeading,
  reductionDocument,
} from '../../../src/report/reduction/reduction-document.ts';
import { formatDocument } from '../../../src/units/format-document.ts';

function reduction(result: Partial<ReducedResult> = {}, warnings: readonly string[] = []): Reduction {
  const axis = { quantity: 'commandedFlow', dimension: 'volumeFlow' } as const;
  return {
    method: 'flowLadder',
    results: [
      {
        quantity: 'meltFlow',
        dimension: 'volumeFlow',
        value: 27.8312,
        interval: { low: 27.3491, high: 28.2077, coverage: 0.95 },
        censored: null,
        ...result,
      },
    ],
    curve: { x: axis, y: axis, readings: [], fit: [], band: [], threshold: 0.95, limits: [] },
    warnings,
  };
}

const open = { low: null, high: null, coverage: 0.95 } as const;
const sheet = { title: 'ladder.csv', subject: null };

function textReduction(found: Reduction, heading: ReductionHeading, colour: boolean): string {
  return formatDocument(reductionDocument(found, heading), 'text', { colour });
}

describe('the text of a reduction', () => {
  it('shows the limit with its interval to three digits, and the caution', () => {
    expect(textReduction(reduction(), sheet, false)).toMatchInlineSnapshot(`
      "Melt flow limit 27.8 mm³/s, 95 % interval 27.3–28.2 mm³/s.

      ladder.csv: flow ladder

      result                value    95 % interval
      melt flow limit  27.8 mm³/s  27.3–28.2 mm³/s

      Caution: These numbers are starting points for a supervised trial, never a
      licence to exceed a limit of the maker.
      Caution: Hot ends burn, dryers can ignite, belts and motors catch hair and
      fingers, hot plastics give off fumes, unattended machines cause fires: follow
      the manual of the machine, the local codes and the advice of qualified people.
      "
    `);
  });

  it('shows which pairing it holds for and whether the readings are real', () => {
    const { registry } = loadFolders(['tests/fixtures/registry']);
    const subject = registry.trial.get('wren-daisy-pla-230')!.data;
    expect(
      textReduction(reduction(), { title: 'wren-daisy-pla-230', subject }, false).split('\n').slice(0, 9),
    ).toMatchInlineSnapshot(`
      [
        "Melt flow limit 27.8 mm³/s, 95 % interval 27.3–28.2 mm³/s (simulated readings).",
        "",
        "wren-daisy-pla-230: flow ladder",
        "",
        "pairing   oakhollow/daisy-pla on plumstead/wren, nozzle hs-0.6, 230 °C",
        "readings  simulated, 2026-02-11",
        "",
        "result                value    95 % interval",
        "melt flow limit  27.8 mm³/s  27.3–28.2 mm³/s",
      ]
    `);
  });

  it('calls a ladder that ended early a lower bound', () => {
    const text = textReduction(reduction({ value: 32, interval: open, censored: 'above' }), sheet, false);
    expect(text).toContain(
      'Melt flow limit at least 32 mm³/s: the ladder ended before the accepted deficit.\n',
    );
  });

  it('calls a ladder that began too high an upper bound', () => {
    const text = textReduction(reduction({ value: 12, interval: open, censored: 'below' }), sheet, false);
    expect(text).toContain('Melt flow limit below 12 mm³/s: the first step exceeds the accepted deficit.\n');
  });

  it('shows each warning on a line of its own', () => {
    const text = textReduction(reduction({}, ['Few steps.', 'No repeats.']), sheet, false);
    expect(text).toContain('\nWarning: Few steps.\nWarning: No repeats.\n');
  });

  it('differs with colour in nothing but colour', () => {
    const [plain, coloured] = [false, true].map((colour) =>
      textReduction(reduction({}, ['Few steps.']), sheet, colour),
    );
    // biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences of colours start with one.
    expect(coloured?.replaceAll(/\u001b\[\d+m/g, '')).toBe(plain);
    expect(coloured).not.toBe(plain);
  });
});

it('the JSON of a reduction keeps all digits', () => {
  expect(formatReductionAsJson(reduction({}, ['Few steps.']))).toMatchInlineSnapshot(`
    "{
      "format": "meltbounds-reduction/1",
      "method": "flowLadder",
      "origin": null,
      "results": [
        {
          "quantity": "meltFlow",
          "value": {
            "value": 27.8312,
            "unit": "mm3/s"
          },
          "interval": {
            "low": 27.3491,
            "high": 28.2077,
            "unit": "mm3/s",
            "coverage": 0.95
          },
          "censored": null
        }
      ],
      "warnings": [
        "Few steps."
      ],
      "cautions": [
        "These numbers are starting points for a supervised trial, never a licence to exceed a limit of the maker.",
        "Hot ends burn, dryers can ignite, belts and motors catch hair and fingers, hot plastics give off fumes, unattended machines cause fires: follow the manual of the machine, the local codes and the advice of qualified people."
      ]
    }
    "
  `);
});
