import type { FileRule } from '../../registry/form/file-rule.ts';
import type { YamlProblem } from '../../registry/yaml/yaml-problem.ts';
import type { ReadingText } from './rule.ts';

const yaml = 'YAML 1.2.2 (yaml.org/spec/1.2.2), the part of it that the registry reads';

/** What files must be so that they can be read as YAML. */
export const fileRuleTexts: Readonly<Record<FileRule | YamlProblem['rule'], ReadingText>> = {
  'file/unreadable': {
    statement: 'Every profile is a plain file that can be read.',
    rationale: 'A file that is passed over in silence would look like one that is sound.',
    source: 'Format of the registry: one document a file.',
  },
  'file/link': {
    statement: 'No profile is a symbolic link.',
    rationale: 'A link may lead out of the registry, and what it shows is not under review.',
    source:
      'Format of the registry: one document a file. CWE-59: improper link resolution before file access.',
  },
  'file/too-large': {
    statement: 'A file is not larger than 1 MiB.',
    rationale: 'The largest honest profile has a tenth of that; more is a wrong file or an attack.',
    source: 'Format of the registry. CWE-400: uncontrolled resource consumption.',
  },
  'file/encoding': {
    statement: 'A file is UTF-8 text.',
    rationale: 'In another encoding signs such as ° and µ turn into others.',
    source: 'YAML 1.2.2, section 5.2; RFC 3629.',
  },
  'file/too-deep': {
    statement: 'Folders are nested no deeper than a kind of profile needs.',
    rationale: 'What stands deeper belongs to no kind, and is a slip of moving files.',
    source: 'Format of the registry: KIND/MAKER/NAME.yaml, trials/YEAR/ID.yaml.',
  },
  'file/many-findings': {
    statement: 'A file has no more findings than anybody can fix in one go, 200.',
    rationale:
      'One slip repeated in every line drowns all others, and a hostile file would fill the screen for hours.',
    source: 'Format of the registry. CWE-400: uncontrolled resource consumption.',
  },
  'syntax/yaml': {
    statement: 'A profile is one well-formed YAML document without tags.',
    rationale: 'A text that has no one reading cannot be judged any further.',
    source: yaml,
    example: {
      kind: 'machine',
      bad: 'name: "Wren',
      good: 'name: "Wren"',
    },
  },
  'syntax/duplicate-key': {
    statement: 'A key stands once in its mapping.',
    rationale: 'Of two values under one key programs keep either the first or the last, and say nothing.',
    source: 'YAML 1.2.2, section 3.2.1.3: keys of a mapping are unique.',
    example: {
      kind: 'machine',
      bad: 'name: Wren\nname: Wren 2',
      good: 'name: Wren',
    },
  },
  'syntax/alias': {
    statement: 'Values are written out, not taken over from elsewhere by an alias.',
    rationale: 'A profile is reviewed line by line; an alias changes in a line that nobody looks at.',
    source: yaml,
    example: {
      kind: 'machine',
      bad: 'name: &name Wren\nmaker: *name',
      good: 'name: Wren\nmaker: Wren',
    },
  },
  'syntax/depth': {
    statement: 'A document is nested no deeper than 24 levels.',
    rationale: 'No kind needs more than 7; deeper nesting exhausts the programs that read it.',
    source: 'CWE-674: uncontrolled recursion.',
  },
  'syntax/empty': {
    statement: 'A file holds a document.',
    rationale: 'An empty profile is a file that was not saved, or was emptied by mistake.',
    source: 'Format of the registry: one document a file.',
  },
};
