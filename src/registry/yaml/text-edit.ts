/** Replacement of a stretch of a text, in UTF-16 code units from 0; the end is exclusive. */
export interface TextEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Applies edits that do not overlap; everything between them stays as it is. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  let result = '';
  let from = 0;
  for (const edit of [...edits].sort((a, b) => a.start - b.start)) {
    result += text.slice(from, edit.start) + edit.text;
    from = edit.end;
  }
  return result + text.slice(from);
}
