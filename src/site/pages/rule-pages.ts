import { ruleDocument } from '../../report/rules/rule-document.ts';
import { formatRulesAsJson } from '../../report/rules/rules-as-json.ts';
import type { Rule } from '../../rules/engine/rule.ts';
import { rules, rulesByClass } from '../../rules/engine/rules.ts';
import { leftColumns, rowNames, section, table } from '../../text/document.ts';
import { link } from '../../text/inline.ts';
import { counted } from '../../text/words.ts';
import { besidePage, rootPages, rulePage, wayFrom } from '../address.ts';
import type { SiteFile } from '../site-file.ts';
import { documentPage } from '../site-page.ts';

/** The list of the rules by class, and a page a rule. */
export function* ruleFiles(): Generator<SiteFile> {
  const to = wayFrom(rootPages.rules);
  const columns = [...rowNames('Rule'), ...leftColumns('Severity', 'What must hold')];
  const sections = [...rulesByClass()].map(([name, listed]) =>
    section(name, [
      table(
        columns,
        listed.map(({ code, severity, statement }) => [
          [link(code, to(rulePage(code)))],
          severity,
          statement,
        ]),
        { caption: `Rules of the class ${name}`, name: 'listing' },
      ),
    ]),
  );
  const answer = `${counted(rules.length, 'rule')} that every profile is judged by.`;
  yield documentPage(rootPages.rules, 'Rules', { title: 'Rules', answer, blocks: sections });
  yield { path: besidePage(rootPages.rules, '.json'), text: formatRulesAsJson(rules) };
  for (const rule of rules) yield* oneRule(rule);
}

function* oneRule(rule: Rule): Generator<SiteFile> {
  const path = rulePage(rule.code);
  yield documentPage(path, rule.code, ruleDocument(rule));
  yield { path: besidePage(path, '.json'), text: formatRulesAsJson([rule]) };
}
