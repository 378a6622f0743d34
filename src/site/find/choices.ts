/** Something to choose among many: what stands for it, and what people read. */
export interface Choice {
  readonly id: string;
  readonly name: string;
}

/** The choices that hold every word that was typed, as far as there is room for them, and how many there are. */
export interface FoundChoices {
  readonly shown: readonly Choice[];
  readonly count: number;
}

/**
 * Choices by what was typed: those whose name begins with it first, then those in which each word begins one, then the others in which
 * each stands somewhere; all of them where nothing was typed. In each group they keep their order.
 */
export function matchingChoices(choices: readonly Choice[], typed: string, most: number): FoundChoices {
  const asked = typed.toLowerCase().split(/\s+/).filter(Boolean);
  const groups: [Choice[], Choice[], Choice[]] = [[], [], []];
  for (const choice of choices) {
    const text = `${choice.name} ${choice.id}`.toLowerCase();
    if (!asked.every((word) => text.includes(word))) continue;
    const words = text.split(/[^\p{L}\p{N}]+/u);
    const begins = asked.every((word) => words.some((each) => each.startsWith(word)));
    groups[text.startsWith(asked.join(' ')) ? 0 : begins ? 1 : 2].push(choice);
  }
  const all = groups.flat();
  return { shown: all.slice(0, most), count: all.length };
}
