import { type AcknowledgedFinding, compareText, type Finding } from '../../registry/finding.ts';
import { rules } from '../../rules/engine/rules.ts';
import { jsonText } from '../../text/json-text.ts';
import { escapeMarkdown } from '../../text/markdown.ts';
import { documentationAddress, rulePageAddress } from '../rules/rule-address.ts';
import type { TextOf } from './findings-document.ts';
import { fingerprinter } from './fingerprints.ts';
import { spanText } from './source-frame.ts';

const schema = 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json';

/**
 * Findings as SARIF 2.1.0 (OASIS), with the texts of the rules that they name, sorted by code. What is acknowledged is
 * counted, and where it is given a result that its file suppresses.
 */
export function formatFindingsAsSarif(
  findings: readonly Finding[],
  version: string,
  { count, listed }: { readonly count: number; readonly listed: readonly AcknowledgedFinding[] } = {
    count: 0,
    listed: [],
  },
  textOf: TextOf = () => undefined,
): string {
  const codes = [...new Set([...findings, ...listed].map(({ rule }) => rule))].sort(compareText);
  const fingerprints = fingerprinter();
  const told = (finding: Finding) =>
    result(finding, {
      ruleIndex: codes.indexOf(finding.rule),
      fingerprint: fingerprints(finding),
      text: textOf(finding.file),
    });
  const run = {
    tool: {
      driver: {
        name: 'meltbounds',
        fullName: `meltbounds ${version}`,
        semanticVersion: version,
        informationUri: documentationAddress,
        rules: codes.map(descriptor),
      },
    },
    automationDetails: { id: 'meltbounds/check/' },
    columnKind: 'utf16CodeUnits',
    originalUriBaseIds: { '%SRCROOT%': { description: { text: 'The folder in which the check was run.' } } },
    results: [
      ...findings.map(told),
      ...listed.map((finding) => ({ ...told(finding), suppressions: [suppression(finding)] })),
    ],
    properties: { acknowledged: count },
  };
  return jsonText({ $schema: schema, version: '2.1.0', runs: [run] });
}

function descriptor(code: string) {
  const rule = rules.find((documented) => documented.code === code);
  const address = { id: code, name: pascalCase(code), helpUri: rulePageAddress(code) };
  if (rule === undefined) return address;
  return {
    ...address,
    shortDescription: { text: rule.statement },
    fullDescription: { text: `${rule.statement} ${rule.rationale}` },
    help: {
      text: `${rule.rationale} Source: ${rule.source}`,
      markdown: `${escapeMarkdown(rule.rationale)}\n\nSource: ${escapeMarkdown(rule.source)}`,
    },
    defaultConfiguration: { level: rule.severity },
    properties: { tags: [code.replace(/\/.*/, '')] },
  };
}

/** `units/bare-number` as `UnitsBareNumber`, the form in which the stricter profiles of SARIF want names. */
function pascalCase(code: string): string {
  return code.replace(/(?:^|[-/])([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

interface Told {
  readonly ruleIndex: number;
  readonly fingerprint: string;
  /** Text of the file; undefined where it could not be read. */
  readonly text: string | undefined;
}

function result(finding: Finding, { ruleIndex, fingerprint, text }: Told) {
  const { rule, severity, message, help, pointer, found, allowed, source } = finding;
  return {
    ruleId: rule,
    ruleIndex,
    level: severity,
    message: { text: help === null ? sentence(message) : `${sentence(message)} ${help}` },
    locations: [
      {
        physicalLocation: { artifactLocation: artifact(finding.file), region: region(finding, text) },
        ...(pointer !== '' && { logicalLocations: [{ fullyQualifiedName: pointer }] }),
      },
    ],
    partialFingerprints: { 'ruleFileAndPlace/v1': fingerprint },
    properties: { found, allowed, source },
  };
}

function suppression({ reason, until }: AcknowledgedFinding) {
  return {
    kind: 'inSource',
    status: 'accepted',
    justification: `${reason} (until ${until})`,
    properties: { until },
  };
}

function sentence(message: string): string {
  return /[.!?]$/.test(message) ? message : `${message}.`;
}

/** Files below the working directory by their path from there; others can only be named by a whole address. */
function artifact(file: string) {
  if (/^(?:\/|[A-Za-z]:\/)/.test(file)) return { uri: fileAddress(file) };
  return { uri: file.split('/').map(encodeURIComponent).join('/'), uriBaseId: '%SRCROOT%' };
}

/** Address of an absolute path; characters that mean something in an address, or may not stand in one, are escaped. */
function fileAddress(path: string): string {
  const escaped = path.replace(/[%?#\\[\]^|\s]/g, encodeURIComponent);
  return new URL(`file://${path.startsWith('/') ? '' : '/'}${escaped}`).href;
}

function region(finding: Finding, text: string | undefined) {
  const { line, column, endLine, endColumn } = finding;
  const isEmpty = endLine === line && endColumn <= column;
  const snippet = isEmpty || text === undefined ? null : spanText(text, finding);
  return {
    startLine: line,
    startColumn: column,
    ...(!isEmpty && { endLine, endColumn }),
    ...(snippet !== null && { snippet: { text: snippet } }),
  };
}
