import { describe, expect, it } from 'vitest';
import { formatFindingsAsJunit } from '../../../src/report/findings/findings-as-junit.ts';
import { aFinding, aNote, aWarning, aWholeFile } from './some-findings.ts';

const clean = 'profiles/jobs/peg.yaml';

describe('the report as JUnit XML', () => {
  it('has one test case a file, those without findings too', () => {
    expect(
      formatFindingsAsJunit([aFinding(), aNote, aWarning, aWholeFile], [clean], 'error'),
    ).toMatchInlineSnapshot(`
      "<?xml version="1.0" encoding="UTF-8"?>
      <testsuites name="meltbounds" tests="4" failures="2" errors="0" skipped="0">
        <testsuite name="check" tests="4" failures="2" errors="0" skipped="0">
          <properties><property name="acknowledged" value="0"/></properties>
          <testcase name="profiles/filaments/a b, 100%: &quot;new&quot;.yaml" classname="profiles">
            <system-out>profiles/filaments/a b, 100%: "new".yaml:3:1 warning acknowledgement/expired
      wrong   It was accepted until 2026-01-31</system-out>
          </testcase>
          <testcase name="profiles/jobs/hook.yaml" classname="profiles">
            <failure message="The file is not UTF-8 text" type="file/encoding">profiles/jobs/hook.yaml:1:1 error file/encoding
      wrong   The file is not UTF-8 text
      fix     Save it as UTF-8</failure>
          </testcase>
          <testcase name="profiles/jobs/peg.yaml" classname="profiles"/>
          <testcase name="profiles/machines/plumstead/wren.yaml" classname="profiles">
            <failure message="The value of &quot;topSpeed&quot;: 500 has no unit" type="units/bare-number">profiles/machines/plumstead/wren.yaml:12:13 error units/bare-number
      wrong   The value of "topSpeed": 500 has no unit
      because UCUM, case-sensitive codes
      fix     if it is in mm/s, write \`500 mm/s\`</failure>
            <system-out>profiles/machines/plumstead/wren.yaml:12:13 note style/key-order
      wrong   "name" stands below "maker"
      because UCUM, case-sensitive codes
      fix     Move it.</system-out>
          </testcase>
        </testsuite>
      </testsuites>
      "
    `);
  });

  it('fails where findings have the severity asked for', () => {
    expect(formatFindingsAsJunit([aWarning], [], 'error')).toContain('tests="1" failures="0"');
    expect(formatFindingsAsJunit([aWarning], [], 'warning')).toContain('tests="1" failures="1"');
  });

  it('shows characters that XML forbids as text', () => {
    const message = 'a\u0000b\u001bc\uffffd\ud800e\u{1f600}\u0085';
    expect(formatFindingsAsJunit([aFinding({ message, help: null })], [], 'error')).toContain(
      'message="a\\u{0}b\\u{1b}c\\u{ffff}d\\u{d800}e\u{1f600}\u0085"',
    );
  });

  it('escapes what would end an attribute or an element', () => {
    const xml = formatFindingsAsJunit([aFinding({ message: `<a> & "b" 'c'\n]]>` })], [], 'error');
    expect(xml).toContain('message="&lt;a&gt; &amp; &quot;b&quot; &apos;c&apos;&#10;]]&gt;"');
    expect(xml).toContain('wrong   &lt;a&gt; &amp; "b" \'c\'\n]]&gt;');
  });
});
