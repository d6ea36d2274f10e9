/** Builds workbooks for tests: the parts of ISO/IEC 29500 a spreadsheet writes, packed by a library. */
import { strToU8, zipSync } from 'fflate';

/** A cell: a text, a number, or one with a style, a formula or a type of its own. */
export type BookCell =
  | string
  | number
  | {
      readonly value?: string | number;
      readonly style?: number;
      readonly formula?: string;
      readonly type?: string;
    };

export interface BookSheet {
  readonly name: string;
  readonly rows: readonly (readonly (BookCell | undefined)[])[];
  readonly merged?: readonly string[];
  readonly state?: string;
}

const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';

/** Styles by number: 0 general, 1 per cent (format 10), 2 a date (14), 3 per cent and 4 a date by formats of their own. */
export const styles = { general: 0, percent: 1, date: 2, ownPercent: 3, ownDate: 4 } as const;

/** A workbook; texts are kept once, as spreadsheets do. @param extra further parts by name. */
export function workbook(
  sheets: readonly BookSheet[],
  { extra = {}, epoch1904 = false }: { extra?: Record<string, string>; epoch1904?: boolean } = {},
): Uint8Array {
  const texts: string[] = [];
  const parts: Record<string, Uint8Array> = {};
  const add = (name: string, xml: string): void => {
    parts[name] = strToU8(head + xml);
  };
  sheets.forEach((sheet, at) => {
    add(`xl/worksheets/sheet${at + 1}.xml`, sheetXml(sheet, texts));
  });
  add(
    'xl/workbook.xml',
    `<workbook xmlns="${main}" xmlns:r="${relations}">${epoch1904 ? '<workbookPr date1904="1"/>' : ''}<sheets>${sheets
      .map(
        ({ name, state }, at) =>
          `<sheet name="${escaped(name)}" sheetId="${at + 1}"${state ? ` state="${state}"` : ''} r:id="rId${at + 1}"/>`,
      )
      .join('')}</sheets></workbook>`,
  );
  add(
    'xl/_rels/workbook.xml.rels',
    `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${sheets
      .map(
        (_, at) =>
          `<Relationship Id="rId${at + 1}" Type="${relations}/worksheet" Target="worksheets/sheet${at + 1}.xml"/>`,
      )
      .join(
        '',
      )}<Relationship Id="rId90" Type="${relations}/sharedStrings" Target="sharedStrings.xml"/><Relationship Id="rId91" Type="${relations}/styles" Target="styles.xml"/></Relationships>`,
  );
  add(
    'xl/sharedStrings.xml',
    `<sst xmlns="${main}" count="${texts.length}" uniqueCount="${texts.length}">${texts.map((text) => `<si><t xml:space="preserve">${escaped(text)}</t></si>`).join('')}</sst>`,
  );
  add(
    'xl/styles.xml',
    `<styleSheet xmlns="${main}"><numFmts count="2"><numFmt numFmtId="170" formatCode="0.000%"/><numFmt numFmtId="171" formatCode="dd\\.mm\\.yyyy"/></numFmts><cellStyleXfs count="1"><xf numFmtId="9"/></cellStyleXfs><cellXfs count="5"><xf numFmtId="0"/><xf numFmtId="10"/><xf numFmtId="14"/><xf numFmtId="170"/><xf numFmtId="171"/></cellXfs></styleSheet>`,
  );
  for (const [name, text] of Object.entries(extra)) parts[name] = strToU8(text);
  return zipSync(parts);
}

function sheetXml({ rows, merged = [] }: BookSheet, texts: string[]): string {
  const cells = (row: readonly (BookCell | undefined)[], number: number): string =>
    row
      .map((cell, at) =>
        cell === undefined ? '' : cellXml(cell, `${String.fromCharCode(65 + at)}${number}`, texts),
      )
      .join('');
  const data = rows.map((row, at) => `<row r="${at + 1}">${cells(row, at + 1)}</row>`).join('');
  const areas =
    merged.length === 0
      ? ''
      : `<mergeCells count="${merged.length}">${merged.map((ref) => `<mergeCell ref="${ref}"/>`).join('')}</mergeCells>`;
  return `<worksheet xmlns="${main}"><sheetData>${data}</sheetData>${areas}</worksheet>`;
}

function cellXml(cell: BookCell, name: string, texts: string[]): string {
  if (typeof cell === 'number') return `<c r="${name}"><v>${cell}</v></c>`;
  if (typeof cell === 'string') {
    if (cell === '') return `<c r="${name}"/>`;
    let at = texts.indexOf(cell);
    if (at === -1) at = texts.push(cell) - 1;
    return `<c r="${name}" t="s"><v>${at}</v></c>`;
  }
  const { value, style, formula, type } = cell;
  const attributes = `${style === undefined ? '' : ` s="${style}"`}${type === undefined ? '' : ` t="${type}"`}`;
  const inner =
    type === 'inlineStr'
      ? `<is><t>${escaped(String(value))}</t></is>`
      : `${formula === undefined ? '' : `<f>${escaped(formula)}</f>`}${value === undefined ? '' : `<v>${escaped(String(value))}</v>`}`;
  return `<c r="${name}"${attributes}>${inner}</c>`;
}

function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
