const names: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
  '\t': '&#9;',
  '\n': '&#10;',
  '\r': '&#13;',
};

/** Characters that XML does not allow, however they are written (XML 1.0, fifth edition, production 2). */
const forbidden = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu;

/** A text for the value of an attribute; forbidden characters are shown as `\u{…}`. */
export function xmlAttribute(text: string): string {
  return allowed(text).replace(/[&<>"'\t\n\r]/g, (character) => names[character] ?? character);
}

/** A text for the content of an element; forbidden characters are shown as `\u{…}`. */
export function xmlContent(text: string): string {
  return allowed(text).replace(/[&<>\r]/g, (character) => names[character] ?? character);
}

function allowed(text: string): string {
  return text.replace(forbidden, (character) => `\\u{${(character.codePointAt(0) ?? 0).toString(16)}}`);
}
