/** A place on an axis, and what is known of the density there. */
export interface LineNode {
  readonly at: number;
  /** Logarithm of the density up to a constant, -Infinity where it is 0. */
  readonly log: number;
  /** What is averaged besides, such as a mean further inside. */
  readonly aside: number;
}

/** An axis, and how finely it is gone along. */
export interface LineAxis {
  readonly low: number;
  readonly high: number;
  /** Distance of nodes in units of the spread that is expected. */
  readonly spacing: number;
  /** The largest step between the logarithms of neighbours near the peak; where it is larger, nodes are put between. */
  readonly cliff: number;
}

/** Where nodes begin, and how far each is from the one before, in units of the axis. */
interface LineStart {
  readonly center: number;
  readonly distance: number;
}

/** Nodes in ascending order; lost where the walk kept climbing away from its start. */
export interface March<Node> {
  readonly nodes: readonly Node[];
  readonly lost: boolean;
}

/** A density that is e^5 below its best changes 95 % intervals by less than a hundredth of their width. */
export const negligible = 5;
/** Steps grow where the density falls by less than this from one node to the next: a long tail needs no fine steps. */
const gentle = 0.5;
const growth = 1.5;
/** So many new best nodes in a row on one side: the walk began at the foot of a peak. */
const mostClimbed = 5;
const mostNodes = 80;

/**
 * Goes from a start to both sides until the density has become negligible against the best node, or has fallen below a
 * floor by its logarithm: at least one node to either side.
 */
export function march<Node extends LineNode>(
  nodeAt: (at: number) => Node,
  axis: LineAxis,
  { center, distance }: LineStart,
  floor: number,
): March<Node> {
  const start = nodeAt(Math.min(axis.high, Math.max(axis.low, center)));
  const up = walk(nodeAt, axis, { start, best: start.log, step: distance, floor });
  if (up.lost) return up;
  const down = walk(nodeAt, axis, { start, best: up.best, step: -distance, floor });
  const nodes = down.nodes.toReversed();
  for (let index = 1; index < up.nodes.length; index++) nodes.push(up.nodes[index] ?? start);
  return { nodes, lost: down.lost };
}

interface Walk<Node> {
  readonly start: Node;
  /** Logarithm of the density at the best node so far. */
  readonly best: number;
  /** To the first node; below 0 downwards. */
  readonly step: number;
  readonly floor: number;
}

function walk<Node extends LineNode>(
  nodeAt: (at: number) => Node,
  { low, high }: LineAxis,
  from: Walk<Node>,
): March<Node> & { readonly best: number } {
  const nodes = [from.start];
  let { best, step } = from;
  for (let climbed = 0; climbed < mostClimbed; ) {
    const edge = nodes.at(-1) ?? from.start;
    const atEnd = step < 0 ? edge.at <= low : edge.at >= high;
    const least = Math.max(from.floor, best - negligible);
    if (atEnd || nodes.length > mostNodes || (isFalling(nodes) && nextLog(nodes) < least)) {
      return { nodes, best, lost: false };
    }
    if (isGentle(nodes)) step *= growth;
    const node = nodeAt(Math.min(high, Math.max(low, edge.at + step)));
    nodes.push(node);
    if (node.log > best) {
      best = node.log;
      climbed += 1;
    }
  }
  return { nodes, best, lost: true };
}

function isFalling(nodes: readonly LineNode[]): boolean {
  return nodes.length > 1 && !((nodes.at(-1)?.log ?? 0) > (nodes.at(-2)?.log ?? 0));
}

function isGentle(nodes: readonly LineNode[]): boolean {
  const fall = (nodes.at(-2)?.log ?? Number.NEGATIVE_INFINITY) - (nodes.at(-1)?.log ?? 0);
  return fall > 0 && fall < gentle;
}

/** What the next node's logarithm should be, by the parabola through the last three, where that falls ever faster. */
function nextLog(nodes: readonly LineNode[]): number {
  const last = nodes.at(-1)?.log ?? Number.NEGATIVE_INFINITY;
  const second = nodes.at(-2)?.log ?? Number.NEGATIVE_INFINITY;
  const third = nodes.at(-3)?.log ?? Number.NEGATIVE_INFINITY;
  const bend = last - 2 * second + third;
  return last < second && bend < 0 && third > Number.NEGATIVE_INFINITY ? 2 * last - second + bend : last;
}
