import type { Policy } from '../../../registry/generated/documents.ts';
import type { Problem } from '../../../result.ts';
import { printable } from '../../../text/printable.ts';

/** What a number of a policy must be, and whether it is. */
interface Demand {
  readonly text: string;
  readonly holds: (value: number) => boolean;
}

const positive: Demand = { text: 'above 0', holds: (value) => value > 0 };
const share: Demand = { text: 'above 0 % and at most 100 %', holds: (value) => value > 0 && value <= 1 };
const stated: Demand = { text: 'given where a weaker number is to be capped', holds: Number.isFinite };
const notNegative: Demand = { text: 'at least 0 K', holds: (value) => value >= 0 };
const setting: Demand = { text: '0 % to 100 %', holds: (value) => value >= 0 && value <= 1 };
const margin: Demand = { text: 'at least 0 % and below 100 %', holds: (value) => value >= 0 && value < 1 };

/** A number of a policy that no table can follow. */
export type UnusablePolicy = Problem<'unusablePolicy'>;

/**
 * Why tables cannot be derived by a policy, or null: a share above one would lift a speed over its bounds, a step or
 * length that is not above 0 leaves nothing to round to.
 */
export function policyProblem(id: string, policy: Policy): UnusablePolicy | null {
  for (const [name, value, demand] of demandsOn(policy)) {
    if (!demand.holds(value)) {
      return {
        code: 'unusablePolicy',
        message: `The policy "${printable(id)}" cannot be used: \`${name}\` must be ${demand.text}`,
        help: 'Correct it in its profile.',
      };
    }
  }
  return null;
}

type NamedDemand = readonly [name: string, value: number, demand: Demand];

function demandsOn(policy: Policy): NamedDemand[] {
  const { flowMargin, layerPath, layerHeights, lineWidths } = policy;
  return [
    ['flowMargin', flowMargin, margin],
    ['layerPath', layerPath, positive],
    ...inEach('fractions', policy.fractions, share),
    ...inEach('accelerationFractions', policy.accelerationFractions, share),
    ...inEach('typicalSegments', policy.typicalSegments, positive),
    ...inEach('layerHeights', layerHeights, positive),
    ...inEach('lineWidths', lineWidths, positive),
    ...inEach('rounding', policy.rounding, positive),
    ['hotEndMargin', policy.hotEndMargin ?? 0, notNegative],
    ['dryingMargin', policy.dryingMargin ?? 0, notNegative],
    ['acceptedDeficit', policy.acceptedDeficit, margin],
    ...sharesOfWeak(policy),
    ...outrightCaps(policy),
    ...inEach('fan', policy.fan ?? {}, setting),
  ];
}

/** A limit that is to be capped needs the share that may be used. */
function sharesOfWeak({ minimumBasis = {} }: Policy): NamedDemand[] {
  return Object.entries(minimumBasis).flatMap(([name, { weaker, share: given }]): NamedDemand[] =>
    weaker === 'cap' || given !== undefined
      ? [[`minimumBasis.${name}.share`, given ?? Number.NaN, given === undefined ? stated : share]]
      : [],
  );
}

/** A cap of nothing would stop the print. */
function outrightCaps({ caps = {} }: Policy): NamedDemand[] {
  return Object.entries(caps).flatMap(([feature, { speed, acceleration }]): NamedDemand[] => [
    ...(speed === undefined ? [] : [[`caps.${feature}.speed`, speed, positive] as const]),
    ...(acceleration === undefined
      ? []
      : [[`caps.${feature}.acceleration`, acceleration, positive] as const]),
  ]);
}

function inEach(name: string, values: object, demand: Demand): NamedDemand[] {
  return Object.entries(values).map(([key, value]: [string, number]) => [`${name}.${key}`, value, demand]);
}
