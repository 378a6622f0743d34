import { basesByStrength } from '../../registry/statement.ts';
import type { Question } from './find-pairings.ts';

/** What stands in the address of the first page: words that are searched for, the question, and pairings to compare. */
export interface FindState {
  readonly typed: string;
  readonly question: Question;
  readonly chosen: readonly string[];
}

/** Pairings that can be compared with each other. */
export const mostCompared = 4;

/** The fragment of an address that holds a state; empty where nothing is asked. */
export function fragmentOf({ typed, question, chosen }: FindState): string {
  const asked = Object.entries(question).filter(([, value]) => value !== null);
  const parts: [string, string][] = [
    ...(typed === '' ? [] : [['search', typed] satisfies [string, string]]),
    ...asked.map(([name, value]): [string, string] => [name, String(value)]),
    ...chosen.map((page): [string, string] => ['pairing', page]),
  ];
  return new URLSearchParams(parts).toString();
}

/** The state that a fragment holds; what it says amiss is not asked. */
export function stateOf(fragment: string): FindState {
  const asked = new URLSearchParams(fragment.replace(/^#/, ''));
  const chamber = asked.get('chamber');
  const basis = basesByStrength.find((each) => each === asked.get('basis'));
  return {
    typed: asked.get('search') ?? '',
    question: {
      policy: asked.get('policy'),
      flow: numberIn(asked.get('flow')),
      temperature: numberIn(asked.get('temperature')),
      material: asked.get('material'),
      diameter: numberIn(asked.get('diameter')),
      polymer: asked.get('polymer'),
      basis: basis ?? null,
      chamber: chamber === 'enclosed' || chamber === 'heated' ? chamber : null,
      noise: numberIn(asked.get('noise')),
      price: numberIn(asked.get('price')),
    },
    chosen: [...new Set(asked.getAll('pairing'))].slice(0, mostCompared),
  };
}

/** A number as people type it, with a point or a comma. */
export function numberIn(text: string | null): number | null {
  const plain = (text ?? '').trim().replace(',', '.');
  return /^\d+(?:\.\d*)?$/.test(plain) ? Number(plain) : null;
}
