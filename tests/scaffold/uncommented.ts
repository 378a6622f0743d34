/** A scaffold with its examples filled in, as a user would: the `#` of an example goes, prose stays a comment. */
export function uncommented(scaffold: string, wanted: (paragraph: string) => boolean = () => true): string {
  return scaffold
    .split('\n\n')
    .map((paragraph) =>
      wanted(paragraph) ? paragraph.replace(/^(\s*)#(?! |$)/gm, '$1').replace(/^#(?= {2})/gm, '') : paragraph,
    )
    .join('\n\n');
}

/** Whether a paragraph of a scaffold is about a key that must be there and is still an example. */
export function isMandatory(paragraph: string): boolean {
  return paragraph.startsWith('# Mandatory') && /^#\w/m.test(paragraph);
}
