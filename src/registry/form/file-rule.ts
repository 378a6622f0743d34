import type { FileProblem } from '../registry-file.ts';

export type FileRule =
  | 'file/unreadable'
  | 'file/link'
  | 'file/too-large'
  | 'file/encoding'
  | 'file/too-deep'
  | 'file/name'
  | 'file/repository'
  | 'file/many-findings';

/** What a file that could not be read means, and what to do. */
export const fileRules: Readonly<Record<FileProblem, { rule: FileRule; message: string; help: string }>> = {
  missing: {
    rule: 'file/unreadable',
    message: 'There is no such file',
    help: 'Check the spelling of the path.',
  },
  unreadable: {
    rule: 'file/unreadable',
    message: 'The file cannot be read',
    help: 'Check that it is a plain file and that you may read it.',
  },
  closedFolder: {
    rule: 'file/unreadable',
    message: 'The folder cannot be read, so nothing in it was looked at',
    help: 'Check that you may both list and enter it.',
  },
  symlink: {
    rule: 'file/link',
    message: 'This is a symbolic link, which a registry does not follow',
    help: 'Put the file itself here.',
  },
  tooLarge: {
    rule: 'file/too-large',
    message: 'The file is larger than 1 MiB',
    help: 'Split it; long series of readings belong into a CSV file beside their trial.',
  },
  notUtf8: {
    rule: 'file/encoding',
    message: 'The file is not UTF-8 text',
    help: 'Save it as UTF-8; most editors ask for the encoding in "save as".',
  },
  tooDeep: {
    rule: 'file/too-deep',
    message: 'Folders are nested deeper than any kind of profile needs',
    help: 'Put profiles at KIND/MAKER/NAME.yaml, trials at trials/YEAR/ID.yaml.',
  },
  badName: {
    rule: 'file/name',
    message: 'This name cannot stand on every system',
    help: 'Name files and folders with lower-case letters, digits and hyphens, and not after a device such as con, aux or nul.',
  },
  repository: {
    rule: 'file/repository',
    message: 'This folder has the insides of a git repository: HEAD, objects and refs',
    help: 'Take it out of the registry, and ask whoever sent it what it is for.',
  },
};
