/** Addresses at which the team's code host opens files for editing, from the registry's configuration. */
export interface WebEditor {
  /** Begins a file: `{path}` stands for its path, `{text}` for its text where the host takes it from the address. */
  readonly newFile: string;
  /** Opens one that is there, by its `{path}`. */
  readonly editFile: string;
}

/** Where a file is opened, and whether its text comes along. */
interface EditorAddress {
  readonly address: string;
  /** Otherwise the text has to be pasted. */
  readonly holdsText: boolean;
}

/** More characters than that are cut or refused by some servers (common practice, no source). */
const longestAddress = 8000;

/** The address that opens a file in the web editor; where it cannot hold the text, it opens an empty one. */
export function editorAddress(
  { newFile, editFile }: WebEditor,
  { path, text, isNew }: { readonly path: string; readonly text: string; readonly isNew: boolean },
): EditorAddress {
  const template = isNew ? newFile : editFile;
  const whole = filled(template, path, text);
  const holdsText = template.includes('{text}') && whole.length <= longestAddress;
  return { address: holdsText ? whole : filled(template, path, ''), holdsText };
}

/** A path may stand in a query as well as between slashes, so that its own slashes stay as they are. */
function filled(template: string, path: string, text: string): string {
  const steps = path.split('/').map(encodeURIComponent).join('/');
  return template.replace(/\{path\}|\{text\}/g, (place) =>
    place === '{path}' ? steps : encodeURIComponent(text),
  );
}

/** What is wrong with a template; null where nothing is. */
export function templateProblem(template: string): string | null {
  if (!/^https:\/\/[^\s/{}]+\//.test(template)) return 'does not begin with https:// and the name of a host';
  if (!template.includes('{path}')) return 'has no {path}';
  const other = /\{(?!path\}|text\})[^}]*\}?/.exec(template);
  return other === null ? null : `has ${other[0]}, and only {path} and {text} stand for something`;
}
