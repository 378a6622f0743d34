import type { Machine } from './generated/documents.ts';

export type HotEnd = Machine['hotEnds'][number];
export type Nozzle = HotEnd['nozzles'][number];

/** A nozzle with the hot end that it fits. */
export interface FittedNozzle {
  readonly hotEnd: HotEnd;
  readonly nozzle: Nozzle;
}

/** All nozzles of a machine, in the order of its file. */
export function nozzlesOf(machine: Machine): FittedNozzle[] {
  return machine.hotEnds.flatMap((hotEnd) => hotEnd.nozzles.map((nozzle) => ({ hotEnd, nozzle })));
}

export function nozzleIds(machine: Machine): string[] {
  return nozzlesOf(machine).map(({ nozzle }) => nozzle.id);
}

export function findNozzle(machine: Machine, id: string): FittedNozzle | null {
  return nozzlesOf(machine).find(({ nozzle }) => nozzle.id === id) ?? null;
}
