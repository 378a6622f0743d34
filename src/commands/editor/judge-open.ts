import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Diagnostic } from 'vscode-languageserver-types';
import { diagnosticOf } from '../../editor/diagnostic.ts';
import type { Finding } from '../../registry/finding.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import { pathOfFile } from '../../registry/registry-file.ts';
import { judge } from '../check/judge.ts';
import type { OpenFile } from './open-files.ts';
import { type OpenText, type RegistrySession, typedFile } from './registry-session.ts';

/** What is to be shown of a file: of an open one with the version of the text that it is about. */
export interface Said {
  readonly uri: string;
  readonly version?: number;
  readonly diagnostics: readonly Diagnostic[];
}

/** What is wrong with the open files of a registry, and with the readings of trials among them. */
export function judgeOpen(session: RegistrySession, open: readonly OpenFile[], today: string): Said[] {
  const texts = open.flatMap(openText);
  const loaded = session.load(texts);
  const paths = new Map(texts.map((each) => [pathOfFile(typedFile(each).file), each.document]));
  const judgement = judge({ loaded: () => loaded }, (file) => paths.has(file), session.memory, today);
  const found = groupedBy(judgement.findings, ({ file }) => file);
  const ofOpen = [...paths].map(([path, document]) =>
    said(document, found.get(path) ?? [], document.version),
  );
  const ofSheets = [...found].filter(([path]) => !paths.has(path));
  return [
    ...ofOpen,
    ...ofSheets.map(([path, findings]) => said(sheet(path, loaded.texts.get(path) ?? '', open), findings)),
  ];
}

export function openText({ target, document }: OpenFile): (OpenText & { readonly document: TextDocument })[] {
  return target === null ? [] : [{ target, text: document.getText(), document }];
}

function said(document: TextDocument, findings: readonly Finding[], version?: number): Said {
  return {
    uri: document.uri,
    ...(version !== undefined && { version }),
    diagnostics: findings.map((finding) => diagnosticOf(finding, document)),
  };
}

/** The readings of a trial, which are read from their file. */
function sheet(path: string, text: string, [any]: readonly OpenFile[]): TextDocument {
  const { href } = pathToFileURL(resolve(any?.target?.cwd ?? '', path));
  return TextDocument.create(href, 'csv', 0, text);
}
