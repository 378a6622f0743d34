/** Address of the documentation; `.example` is reserved (RFC 2606), as in the `$id` of the schemas. */
export const documentationAddress = 'https://meltbounds.example/';

/** Name of the page about a rule: `units-bare-number.md`. */
export function rulePageName(code: string): string {
  return `${code.replaceAll('/', '-')}.md`;
}

export function rulePageAddress(code: string): string {
  return `${documentationAddress}docs/rules/${rulePageName(code)}`;
}
