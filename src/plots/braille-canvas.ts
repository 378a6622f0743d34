/** The dots of a braille cell by row and column, as bits of its code point (Unicode, block U+2800). */
const bits = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
] as const;

/** A grid of characters on which dots, eight to a character, and whole characters can be set. */
export interface BrailleCanvas {
  /** Sets the dot at shares of the width and of the height from the bottom; outside of 0 to 1 nothing is set. */
  readonly dot: (x: number, y: number) => void;
  /** Sets a character there, over any dots. */
  readonly character: (x: number, y: number, character: string) => void;
  readonly lines: () => string[];
}

export function brailleCanvas(columns: number, rows: number): BrailleCanvas {
  const dots = Array.from({ length: rows }, () => new Array<number>(columns).fill(0));
  const characters = Array.from({ length: rows }, () => new Array<string>(columns).fill(''));
  const isInside = (x: number, y: number) => x >= 0 && x <= 1 && y >= 0 && y <= 1;
  return {
    dot(x, y) {
      if (!isInside(x, y)) return;
      const column = Math.round(x * (columns * 2 - 1));
      const row = Math.round((1 - y) * (rows * 4 - 1));
      const cells = dots[row >> 2];
      if (cells === undefined) return;
      cells[column >> 1] = (cells[column >> 1] ?? 0) | (bits[row & 3]?.[column & 1] ?? 0);
    },
    character(x, y, character) {
      const cells = characters[Math.round((1 - y) * (rows - 1))];
      if (isInside(x, y) && cells !== undefined) cells[Math.round(x * (columns - 1))] = character;
    },
    lines: () =>
      dots.map((cells, row) =>
        cells
          .map((cell, column) => characters[row]?.[column] || (cell === 0 ? ' ' : brailleCharacter(cell)))
          .join('')
          .trimEnd(),
      ),
  };
}

function brailleCharacter(cell: number): string {
  return String.fromCodePoint(0x2800 + cell);
}
