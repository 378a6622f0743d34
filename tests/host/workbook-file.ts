import { strToU8, zipSync } from 'fflate';

type WorkbookCell = string | number | { readonly formula: string; readonly value: number } | null;

/** A workbook (ECMA-376) with a sheet for each name, made without the reader that is tested. */
export function workbookOf(
  sheets: Readonly<Record<string, readonly (readonly WorkbookCell[])[]>>,
): Uint8Array {
  const parts = Object.values(sheets).map((rows) => sheetXml(rows.map(rowXml).join('')));
  return workbookOfParts(Object.keys(sheets), parts);
}

/** The same with the sheets as they stand in the archive. */
export function workbookOfParts(names: readonly string[], parts: readonly string[]): Uint8Array {
  const ids = names.map((_, index) => index + 1);
  const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  return zipSync({
    '[Content_Types].xml': strToU8(
      `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/></Types>`,
    ),
    'xl/workbook.xml': strToU8(
      `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="${relations}"><sheets>${ids.map((id) => `<sheet name="${names[id - 1]}" sheetId="${id}" r:id="rId${id}"/>`).join('')}</sheets></workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': strToU8(
      `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${ids.map((id) => `<Relationship Id="rId${id}" Type="${relations}/worksheet" Target="worksheets/sheet${id}.xml"/>`).join('')}</Relationships>`,
    ),
    ...Object.fromEntries(parts.map((part, index) => [`xl/worksheets/sheet${index + 1}.xml`, strToU8(part)])),
  });
}

/** A sheet with rows that are XML already. */
export function sheetXml(rows: string): string {
  return `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${rows}</sheetData></worksheet>`;
}

function rowXml(cells: readonly WorkbookCell[], index: number): string {
  const row = index + 1;
  return `<row r="${row}">${cells.map((cell, column) => cellXml(cell, `${String.fromCharCode(65 + column)}${row}`)).join('')}</row>`;
}

function cellXml(cell: WorkbookCell, place: string): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return `<c r="${place}"><v>${cell}</v></c>`;
  if (typeof cell === 'string') return `<c r="${place}" t="inlineStr"><is><t>${cell}</t></is></c>`;
  return `<c r="${place}"><f>${cell.formula}</f><v>${cell.value}</v></c>`;
}
