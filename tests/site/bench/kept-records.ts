import { readFileSync } from 'node:fs';

/** An entry of a draft as the store of a browser held it. */
interface KeptRecord {
  readonly draft: string;
  readonly key: string;
  readonly form: number;
  readonly entry: unknown;
}

/** What the page of a form left in the store of a browser, and the version of that store: read out of it as it was. */
export function keptRecords(form: number): {
  readonly version: number;
  readonly records: readonly KeptRecord[];
} {
  return JSON.parse(readFileSync(new URL(`drafts/form-${form}.store`, import.meta.url), 'utf8'));
}
