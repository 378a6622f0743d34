import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Diagnostic } from 'vscode-languageserver-types';
import { type EditorFolders, type EditorTarget, editorTarget, pathOfAddress } from './editor-target.ts';

/** A file that is open in an editor. */
export interface OpenFile {
  readonly document: TextDocument;
  /** Beside what it is judged; null where it is none of ours. */
  readonly target: EditorTarget | null;
  /** What was said of it last, of an earlier text perhaps. */
  readonly said: readonly Diagnostic[];
}

/** A change of an open text: of a part of it, or the whole. */
export type TextChange = Parameters<typeof TextDocument.update>[1][number];

/** The files that are open, by the addresses that the editor gives them. */
export interface OpenFiles {
  readonly open: (uri: string, version: number, text: string) => void;
  readonly change: (uri: string, version: number, changes: readonly TextChange[]) => void;
  readonly close: (uri: string) => void;
  readonly say: (uri: string, said: readonly Diagnostic[]) => void;
  /** Looks anew to which registries they belong. */
  readonly place: () => void;
  readonly get: (uri: string) => OpenFile | undefined;
  readonly all: () => readonly OpenFile[];
}

export function openFiles(folders: () => EditorFolders): OpenFiles {
  const files = new Map<string, OpenFile>();
  const placed = (document: TextDocument, said: readonly Diagnostic[]) => {
    const path = pathOfAddress(document.uri);
    const target = path === null ? null : editorTarget(path, document.getText(), folders());
    files.set(document.uri, { document, target, said });
  };
  return {
    open: (uri, version, text) => placed(TextDocument.create(uri, 'yaml', version, text), []),
    change: (uri, version, changes) => {
      const file = files.get(uri);
      if (file !== undefined) placed(TextDocument.update(file.document, [...changes], version), file.said);
    },
    close: (uri) => void files.delete(uri),
    say: (uri, said) => {
      const file = files.get(uri);
      if (file !== undefined) files.set(uri, { ...file, said });
    },
    place: () => {
      for (const { document, said } of files.values()) placed(document, said);
    },
    get: (uri) => files.get(uri),
    all: () => [...files.values()],
  };
}
