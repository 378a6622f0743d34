/** Signatures at the beginning of files, as bytes or as the characters that they stand for. */
const signatures: readonly (readonly [signature: string, kind: string])[] = [
  ['%PDF', 'a PDF document'],
  ['\x89PNG', 'a PNG picture'],
  ['\xff\xd8\xff', 'a JPEG picture'],
  ['GIF8', 'a GIF picture'],
  ['RIFF', 'a picture, sound or film'],
  ['PK\x03\x04', 'a zip archive'],
  ['PK\x05\x06', 'an empty zip archive'],
  ['\x1f\x8b', 'a gzip archive'],
  ['7z\xbc\xaf', 'a 7z archive'],
  ['\xd0\xcf\x11\xe0', 'an office document of the old binary form (.xls, .doc)'],
  ['SQLite format 3', 'a data base'],
  ['\x7fELF', 'a program'],
  ['MZ', 'a program'],
];

/** What a file is that is no text, by the bytes at its beginning; null where they tell nothing. */
export function kindOfBytes(bytes: Uint8Array): string | null {
  const beginning = String.fromCharCode(...bytes.subarray(0, 16));
  return signatures.find(([signature]) => beginning.startsWith(signature))?.[1] ?? null;
}

/** Whether bytes are a zip archive, as workbooks are. */
export function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;
}

const beginningOfYaml = /^(?:---|%YAML\b.*|[A-Za-z][\w-]*:(?:\s.*)?)$/;

/** What a text is that is no table: JSON, YAML, or a page of mark-up; null where it may be a table. */
export function kindOfText(text: string): string | null {
  const lines = text.slice(0, 4000).split(/\r\n?|\n/);
  const first = lines.map((line) => line.trim()).find((line) => line !== '' && !line.startsWith('#'));
  if (first === undefined) return null;
  if (/^[{[]/.test(first) && isJson(text)) return 'a JSON file';
  if (/^<(?:[a-z!?])/i.test(first)) return 'a page of HTML or XML';
  return beginningOfYaml.test(first) && !/[;\t]/.test(first) ? 'a YAML file' : null;
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
