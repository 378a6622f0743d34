import { readFileSync } from 'node:fs';
import { XmlDocument, XsdValidator } from 'libxml2-wasm';
import { describe, expect, it } from 'vitest';
import type { Finding, Severity } from '../../../src/registry/finding.ts';
import { formatFindingsAsJunit } from '../../../src/report/findings/findings-as-junit.ts';
import { aFinding, aNote, aWarning, aWholeFile } from './some-findings.ts';

const clean = 'profiles/jobs/peg.yaml';

function junit(findings: readonly Finding[], files: readonly string[], failOn: Severity): string {
  return formatFindingsAsJunit(findings, { files, failOn, day: '2026-03-12' });
}

describe('the report as JUnit XML', () => {
  it('has one test case a file, those without findings too', () => {
    expect(junit([aFinding(), aNote, aWarning, aWholeFile], [clean], 'error')).toMatchInlineSnapshot(`
      "<?xml version="1.0" encoding="UTF-8"?>
      <testsuites>
        <testsuite name="check" package="meltbounds" id="0" timestamp="2026-03-12T00:00:00" hostname="localhost" tests="4" failures="2" errors="0" time="0">
          <properties><property name="acknowledged" value="0"/></properties>
          <testcase name="profiles/filaments/a b, 100%: &quot;new&quot;.yaml" classname="profiles" time="0"/>
          <testcase name="profiles/jobs/hook.yaml" classname="profiles" time="0">
            <failure message="The file is not UTF-8 text" type="file/encoding">profiles/jobs/hook.yaml:1:1 error file/encoding
      wrong   The file is not UTF-8 text
      fix     Save it as UTF-8</failure>
          </testcase>
          <testcase name="profiles/jobs/peg.yaml" classname="profiles" time="0"/>
          <testcase name="profiles/machines/plumstead/wren.yaml" classname="profiles" time="0">
            <failure message="The value of &quot;topSpeed&quot;: 500 has no unit" type="units/bare-number">profiles/machines/plumstead/wren.yaml:12:13 error units/bare-number
      wrong   The value of "topSpeed": 500 has no unit
      because UCUM, case-sensitive codes
      fix     if it is in mm/s, write \`500 mm/s\`</failure>
          </testcase>
          <system-out>profiles/machines/plumstead/wren.yaml:12:13 note style/key-order
      wrong   "name" stands below "maker"
      because UCUM, case-sensitive codes
      fix     Move it.
      profiles/filaments/a b, 100%: "new".yaml:3:1 warning acknowledgement/expired
      wrong   It was accepted until 2026-01-31</system-out>
          <system-err></system-err>
        </testsuite>
      </testsuites>
      "
    `);
  });

  it('fails where findings have the severity asked for', () => {
    expect(junit([aWarning], [], 'error')).toContain('tests="1" failures="0"');
    expect(junit([aWarning], [], 'warning')).toContain('tests="1" failures="1"');
  });

  it('shows characters that XML forbids as text', () => {
    const message = 'a\u0000b\u001bc\uffffd\ud800e\u{1f600}\u0085';
    expect(junit([aFinding({ message, help: null })], [], 'error')).toContain(
      'message="a\\u{0}b\\u{1b}c\\u{ffff}d\\u{d800}e\u{1f600}\u0085"',
    );
  });

  it('escapes what would end an attribute or an element', () => {
    const xml = junit([aFinding({ message: `<a> & "b" 'c'\n]]>` })], [], 'error');
    expect(xml).toContain('message="&lt;a&gt; &amp; &quot;b&quot; &apos;c&apos;&#10;]]&gt;"');
    expect(xml).toContain('wrong   &lt;a&gt; &amp; "b" \'c\'\n]]&gt;');
  });

  it('fits the narrowest schema in use, which wants every attribute and child in its place', () => {
    const xsd = XmlDocument.fromBuffer(readFileSync(new URL('junit-narrow.xsd', import.meta.url)));
    const validator = XsdValidator.fromDoc(xsd);
    const judge = (xml: string) => {
      using document = XmlDocument.fromString(xml);
      validator.validate(document);
    };
    const xml = junit([aFinding({ message: '<a> & ]]>' }), aNote, aWarning, aWholeFile], [clean], 'error');
    expect(() => judge(xml)).not.toThrow();
    expect(() => judge(junit([], [clean], 'error'))).not.toThrow();
    expect(() => judge(xml.replace(' hostname="localhost"', ''))).toThrow('hostname');
    expect(() => judge(xml.replace('    <system-err></system-err>\n', ''))).toThrow('system-err');
  });
});
