import { brokenKey, type Registry } from '../../registry/registry.ts';

/** An id for a new trial: words joined by hyphens, with a number behind them where the registry has it already. */
export function freeTrialId(registry: Registry, words: readonly string[]): string {
  const id = words.map((word) => word.split('/').at(-1)).join('-');
  const isTaken = (candidate: string) =>
    registry.trial.has(candidate) || registry.broken.has(brokenKey('trial', candidate));
  if (!isTaken(id)) return id;
  let number = 2;
  while (isTaken(`${id}-${number}`)) number += 1;
  return `${id}-${number}`;
}
