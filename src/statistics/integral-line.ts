import { type LineAxis, type LineNode, type March, march, negligible } from './line-march.ts';

/** Where the bulk of a density along a line is thought to be. */
export interface LineGuess {
  readonly center: number;
  /** Standard deviation. */
  readonly spread: number;
}

/** The integral of a density along a line, with the nodes that it was taken from, ascending. */
export interface LineIntegral<Node extends LineNode> {
  readonly nodes: readonly Node[];
  /** How much of the line each node stands for. */
  readonly widths: readonly number[];
  readonly logIntegral: number;
  /** Mean and standard deviation of the place, and the mean of what nodes hold aside. */
  readonly mean: number;
  readonly spread: number;
  readonly aside: number;
}

/** Nodes that close to the best one, by the logarithm, are on the peak; fewer of them do not show its width. */
const peak = 3;
const enoughOnPeak = 3;
/** Nodes further apart than so many standard deviations miss what is between. */
const coarsest = 1.8;
const bisections = 3;
const attempts = 12;

/**
 * The integral of a density along an axis by the trapezoidal rule, whose error dwindles fast for smooth peaks
 * (Trefethen and Weideman, "The exponentially convergent trapezoidal rule", SIAM Review 56 (2014) 385-458). Nodes are
 * laid again where the guess of the peak was poor, and put between where the density has a cliff. Null where the
 * density is 0 wherever it was looked at. What lies below a floor, by its logarithm, may be summed coarsely.
 */
export function integrateAlong<Node extends LineNode>(
  nodeAt: (at: number) => Node,
  axis: LineAxis,
  guess: LineGuess,
  floor = Number.NEGATIVE_INFINITY,
): LineIntegral<Node> | null {
  let where = guess;
  let sum: LineIntegral<Node> | null = null;
  for (let attempt = 0; attempt < attempts; attempt++) {
    const distance = where.spread * axis.spacing;
    const found = march(nodeAt, axis, { center: where.center, distance }, floor);
    const best = highest(found.nodes);
    if (best === Number.NEGATIVE_INFINITY) return null;
    if (found.lost) {
      where = ahead(found, where);
      continue;
    }
    if (best < floor) return summed(found.nodes, axis);
    sum = summed(bisected(nodeAt, axis, trimmed(found.nodes, best - negligible)), axis);
    const onPeak = countAbove(found.nodes, best - peak);
    if (onPeak >= enoughOnPeak && distance <= coarsest * sum.spread) return sum;
    const narrower = onPeak < enoughOnPeak ? 0.4 * where.spread : where.spread;
    where = { center: sum.mean, spread: Math.min(narrower, Math.max(sum.spread, 0.1 * where.spread)) };
  }
  return sum;
}

/** Where to go on after a walk that did not come over the peak. */
function ahead({ nodes }: March<LineNode>, { center, spread }: LineGuess): LineGuess {
  const vertex = parabola(nodes);
  if (vertex !== null) {
    return { center: vertex.center, spread: spread * Math.min(5, Math.max(0.3, vertex.spread / spread)) };
  }
  const best = highest(nodes);
  return { center: nodes.find(({ log }) => log === best)?.at ?? center, spread: 2 * spread };
}

/** In place of a neighbour that is missing: what is not a number bends nowhere. */
const nowhere: LineNode = { at: Number.NaN, log: Number.NaN, aside: Number.NaN };

/** The normal density through the best node and its neighbours; null where they do not bend downwards. */
function parabola(nodes: readonly LineNode[]): LineGuess | null {
  const best = highest(nodes);
  const place = Math.min(
    nodes.length - 2,
    Math.max(
      1,
      nodes.findIndex(({ log }) => log === best),
    ),
  );
  const [before = nowhere, here = nowhere, after = nowhere] = nodes.slice(place - 1, place + 2);
  const left = (here.log - before.log) / (here.at - before.at);
  const right = (after.log - here.log) / (after.at - here.at);
  const bend = (2 * (right - left)) / (after.at - before.at);
  if (!(bend < 0 && Number.isFinite(bend))) return null;
  const reach = 10 * Math.abs(after.at - before.at);
  const shift = -(left + right) / (2 * bend);
  return { center: here.at + Math.min(reach, Math.max(-reach, shift)), spread: 1 / Math.sqrt(-bend) };
}

function summed<Node extends LineNode>(nodes: readonly Node[], axis: LineAxis): LineIntegral<Node> {
  const best = highest(nodes);
  const widths = widthsOf(nodes, axis);
  const weights: number[] = [];
  let sum = 0;
  let mean = 0;
  let aside = 0;
  for (let index = 0; index < nodes.length; index++) {
    const { at = 0, log = 0, aside: own = 0 } = nodes[index] ?? {};
    const weight = Math.exp(log - best) * (widths[index] ?? 0);
    weights.push(weight);
    sum += weight;
    mean += weight * at;
    aside += weight * own;
  }
  mean /= sum;
  // By the distances from the mean, since a difference of two sums would leave only rounding of a narrow line.
  let square = 0;
  for (let index = 0; index < nodes.length; index++) {
    square += (weights[index] ?? 0) * ((nodes[index]?.at ?? 0) - mean) ** 2;
  }
  return {
    nodes,
    widths,
    logIntegral: best + Math.log(sum),
    mean,
    spread: Math.sqrt(square / sum),
    aside: aside / sum,
  };
}

/** Half-way to the neighbours; the outermost nodes reach as far outwards as inwards, but not beyond the axis. */
function widthsOf(nodes: readonly LineNode[], { low, high }: LineAxis): number[] {
  const widths: number[] = [];
  for (let index = 0; index < nodes.length; index++) {
    const at = nodes[index]?.at ?? Number.NaN;
    const before = nodes[index - 1]?.at;
    const after = nodes[index + 1]?.at;
    const left = before !== undefined ? at - before : at <= low ? 0 : (after ?? at) - at;
    const right = after !== undefined ? after - at : at >= high ? 0 : at - (before ?? at);
    widths.push((left + right) / 2);
  }
  return widths;
}

/** Without what lies beyond the first negligible node on either side. */
function trimmed<Node extends LineNode>(nodes: readonly Node[], floor: number): readonly Node[] {
  let first = 0;
  let last = nodes.length - 1;
  while (first < last && (nodes[first + 1]?.log ?? floor) < floor) first += 1;
  while (first < last && (nodes[last - 1]?.log ?? floor) < floor) last -= 1;
  return nodes.slice(first, last + 1);
}

/** With nodes between those near the peak whose logarithms differ by more than the axis allows. */
function bisected<Node extends LineNode>(
  nodeAt: (at: number) => Node,
  { cliff }: LineAxis,
  nodes: readonly Node[],
): readonly Node[] {
  let finer = nodes;
  for (let round = 0; round < bisections; round++) {
    const before = finer;
    const floor = highest(before) - peak;
    if (!before.some((node, index) => isSteep(before[index - 1] ?? node, node, floor, cliff))) return before;
    finer = before.flatMap((node, index) => {
      const other = before[index - 1] ?? node;
      return isSteep(other, node, floor, cliff) ? [nodeAt((other.at + node.at) / 2), node] : [node];
    });
  }
  return finer;
}

function isSteep(one: LineNode, other: LineNode, floor: number, cliff: number): boolean {
  return (one.log > floor || other.log > floor) && Math.abs(one.log - other.log) > cliff;
}

function highest(nodes: readonly LineNode[]): number {
  let best = Number.NEGATIVE_INFINITY;
  for (const { log } of nodes) if (log > best) best = log;
  return best;
}

function countAbove(nodes: readonly LineNode[], floor: number): number {
  let count = 0;
  for (const { log } of nodes) if (log > floor) count += 1;
  return count;
}
