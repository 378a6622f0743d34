import { HtmlValidate } from 'html-validate';

// The rules of the validator, those for access included; but ids may make a title longer than search engines show.
const validator = new HtmlValidate({
  root: true,
  extends: ['html-validate:recommended', 'html-validate:document', 'html-validate:a11y'],
  rules: { 'long-title': 'off' },
});

/** What a validator of HTML has against a page: line, rule and message. */
export async function htmlComplaints(html: string): Promise<string[]> {
  const { results } = await validator.validateString(html);
  return results.flatMap(({ messages }) =>
    messages.map(({ ruleId, message, line }) => `${line}: ${ruleId}: ${message}`),
  );
}
