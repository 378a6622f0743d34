import { strToU8, zipSync } from 'fflate';
import { printableLines } from './printable.ts';
import { xmlAttribute, xmlContent } from './xml-text.ts';

/** What stands in a cell: a number, by which a spreadsheet calculates, or text, which it never runs. */
type WorkbookCell = string | number;

/** A sheet of a workbook; its head stays in sight. */
export interface Sheet {
  /** At most 31 characters, none of `[]:*?/\`. */
  readonly name: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly WorkbookCell[])[];
  /** Widest column, in characters; texts that are longer are wrapped. */
  readonly widest?: number;
}

const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const packageRelations = 'http://schemas.openxmlformats.org/package/2006/relationships';
const contentTypes = 'http://schemas.openxmlformats.org/package/2006/content-types';
const sheetMl = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

/** Styles of cells by their place in `styles`: plain, head, wrapped text. */
const style = { head: 1, wrapped: 2 } as const;

const styles = [
  `<styleSheet xmlns="${main}">`,
  '<fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts>',
  '<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>',
  '<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders>',
  '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>',
  '<cellXfs count="3"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>',
  '<xf numFmtId="0" fontId="1" fillId="0" borderId="0" xfId="0" applyFont="1" applyAlignment="1"><alignment vertical="top" wrapText="1"/></xf>',
  '<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0" applyAlignment="1"><alignment vertical="top" wrapText="1"/></xf></cellXfs>',
  '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>',
  '</styleSheet>',
].join('');

/**
 * Sheets as a workbook of the standard form (ECMA-376, Office Open XML), which every spreadsheet opens. Numbers are numbers, so that
 * each shows them with its own decimal sign. The same sheets give the same bytes.
 */
export function formatWorkbook(sheets: readonly Sheet[]): Uint8Array {
  const files: Readonly<Record<string, string>> = {
    '[Content_Types].xml': typesXml(sheets),
    '_rels/.rels': relationsXml([['officeDocument', 'xl/workbook.xml']]),
    'xl/workbook.xml': workbookXml(sheets),
    'xl/_rels/workbook.xml.rels': relationsXml([
      ...sheets.map((_, index) => ['worksheet', `worksheets/sheet${index + 1}.xml`] as const),
      ['styles', 'styles.xml'],
    ]),
    'xl/styles.xml': declared(styles),
    ...Object.fromEntries(
      sheets.map((sheet, index) => [`xl/worksheets/sheet${index + 1}.xml`, sheetXml(sheet)]),
    ),
  };
  const packed = Object.entries(files).map(([name, text]) => [name, [strToU8(text), { level: 6 }]] as const);
  return zipSync(Object.fromEntries(packed) as Parameters<typeof zipSync>[0], {
    // The first day that the archive knows, as the clock of this place shows it.
    mtime: new Date(1980, 0, 1),
  });
}

function declared(xml: string): string {
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n${xml}`;
}

function typesXml(sheets: readonly Sheet[]): string {
  const parts = [
    ['/xl/workbook.xml', 'sheet.main'],
    ['/xl/styles.xml', 'styles'],
    ...sheets.map((_, index) => [`/xl/worksheets/sheet${index + 1}.xml`, 'worksheet']),
  ];
  const overrides = parts.map(
    ([path, type]) => `<Override PartName="${path}" ContentType="${sheetMl}.${type}+xml"/>`,
  );
  return declared(
    `<Types xmlns="${contentTypes}"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>${overrides.join('')}</Types>`,
  );
}

function relationsXml(targets: readonly (readonly [type: string, path: string])[]): string {
  const all = targets.map(
    ([type, path], index) =>
      `<Relationship Id="rId${index + 1}" Type="${relations}/${type}" Target="${path}"/>`,
  );
  return declared(`<Relationships xmlns="${packageRelations}">${all.join('')}</Relationships>`);
}

function workbookXml(sheets: readonly Sheet[]): string {
  const all = sheets.map(
    ({ name }, index) =>
      `<sheet name="${xmlAttribute(name)}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`,
  );
  return declared(
    `<workbook xmlns="${main}" xmlns:r="${relations}"><sheets>${all.join('')}</sheets></workbook>`,
  );
}

function sheetXml({ head, rows, widest = 24 }: Sheet): string {
  const columns = head.map((title, column) => {
    const lengths = rows.map((row) => String(row[column] ?? '').length);
    const width = Math.min(
      widest,
      Math.max(8, ...lengths, ...title.split(' ').map(({ length }) => length)) + 2,
    );
    return `<col min="${column + 1}" max="${column + 1}" width="${width}" customWidth="1"/>`;
  });
  const lines = [
    rowXml(head, 1, () => style.head),
    ...rows.map((row, index) =>
      rowXml(row, index + 2, (cell) => (isLong(cell, widest) ? style.wrapped : null)),
    ),
  ];
  return declared(
    [
      `<worksheet xmlns="${main}">`,
      '<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>',
      `<cols>${columns.join('')}</cols><sheetData>${lines.join('')}</sheetData></worksheet>`,
    ].join(''),
  );
}

function isLong(cell: WorkbookCell, widest: number): boolean {
  return typeof cell === 'string' && (cell.length > widest || cell.includes('\n'));
}

function rowXml(
  cells: readonly WorkbookCell[],
  number: number,
  styleOf: (cell: WorkbookCell) => number | null,
): string {
  const all = cells.map((cell, column) => {
    if (cell === '') return '';
    const styled = styleOf(cell);
    const place = `r="${columnName(column)}${number}"${styled === null ? '' : ` s="${styled}"`}`;
    return typeof cell === 'number'
      ? `<c ${place}><v>${cell}</v></c>`
      : `<c ${place} t="inlineStr"><is><t xml:space="preserve">${xmlContent(printableLines(cell))}</t></is></c>`;
  });
  return `<row r="${number}">${all.join('')}</row>`;
}

/** Letters of a column, counted from 0: A to Z, then AA. */
function columnName(column: number): string {
  const letter = String.fromCharCode(65 + (column % 26));
  return column < 26 ? letter : columnName(Math.floor(column / 26) - 1) + letter;
}
