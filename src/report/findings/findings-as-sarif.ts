import { type AcknowledgedFinding, compareText, type Finding } from '../../registry/finding.ts';
import { rules } from '../../rules/engine/rules.ts';
import { jsonText } from '../../text/json-text.ts';
import { sha256Of } from '../../text/sha256.ts';
import { documentationAddress, rulePageAddress } from '../rules/rule-address.ts';

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
): string {
  const codes = [...new Set([...findings, ...listed].map(({ rule }) => rule))].sort(compareText);
  const fingerprints = fingerprinter();
  const run = {
    tool: {
      driver: {
        name: 'meltbounds',
        semanticVersion: version,
        informationUri: documentationAddress,
        rules: codes.map(descriptor),
      },
    },
    columnKind: 'utf16CodeUnits',
    originalUriBaseIds: { '%SRCROOT%': { description: { text: 'The folder in which the check was run.' } } },
    results: [
      ...findings.map((finding) => result(finding, codes.indexOf(finding.rule), fingerprints(finding))),
      ...listed.map((finding) => ({
        ...result(finding, codes.indexOf(finding.rule), fingerprints(finding)),
        suppressions: [suppression(finding)],
      })),
    ],
    properties: { acknowledged: count },
  };
  return jsonText({ $schema: schema, version: '2.1.0', runs: [run] });
}

function descriptor(code: string) {
  const rule = rules.find((documented) => documented.code === code);
  const address = { id: code, helpUri: rulePageAddress(code) };
  if (rule === undefined) return address;
  return {
    ...address,
    shortDescription: { text: rule.statement },
    fullDescription: { text: `${rule.statement} ${rule.rationale}` },
    help: { text: `${rule.rationale} Source: ${rule.source}` },
    defaultConfiguration: { level: rule.severity },
  };
}

function result(finding: Finding, ruleIndex: number, fingerprint: string) {
  const { rule, severity, message, help, pointer, found, allowed, source } = finding;
  return {
    ruleId: rule,
    ruleIndex,
    level: severity,
    message: { text: help === null ? sentence(message) : `${sentence(message)} ${help}` },
    locations: [
      {
        physicalLocation: { artifactLocation: artifact(finding.file), region: region(finding) },
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

function region({ line, column, endLine, endColumn }: Finding) {
  const isEmpty = endLine === line && endColumn <= column;
  return { startLine: line, startColumn: column, ...(!isEmpty && { endLine, endColumn }) };
}

/** Tells findings apart by what they are about, not by line, so that they stay the same when lines move. */
function fingerprinter(): (finding: Finding) => string {
  const seen = new Map<string, number>();
  return ({ rule, file, pointer }) => {
    const key = JSON.stringify([rule, file, pointer]);
    const count = (seen.get(key) ?? 0) + 1;
    seen.set(key, count);
    return sha256Of(JSON.stringify([rule, file, pointer, count])).slice(0, 32);
  };
}
