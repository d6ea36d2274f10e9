/** An XLSX workbook → one of its sheets. Macros, links and pictures are never looked at, formulas never worked out. */
import { type Sheet, UnusableSheet } from '../cell.ts';
import { shownByStyle } from './styles.ts';
import { readWorksheet } from './worksheet.ts';
import { eachTag } from './xml.ts';
import { damaged, Zip } from './zip.ts';

interface Listed {
  readonly name: string;
  readonly relation: string;
  readonly isHidden: boolean;
}

/**
 * @param wanted the sheet by name; without one the workbook may have no more than one that is shown and not empty.
 * @throws UnusableSheet where it cannot be read, or which sheet is meant is not said.
 */
export function xlsxSheet(bytes: Uint8Array, wanted: string | undefined): Sheet {
  const zip = new Zip(bytes);
  const book = zip.text('xl/workbook.xml');
  if (book === undefined) throw damaged();
  const sheets: Listed[] = [];
  let epoch: 1900 | 1904 = 1900;
  eachTag(book, {
    open(name, { name: called = '', id = '', state = 'visible', date1904 = '' }) {
      if (name === 'sheet') {
        sheets.push({ name: called, relation: id, isHidden: state !== 'visible' });
      } else if (name === 'workbookPr' && /^(1|true)$/.test(date1904)) epoch = 1904;
    },
  });
  const relations = relationsOf(zip);
  const setting = {
    sharedTexts: sharedTexts(zip.text('xl/sharedStrings.xml')),
    shown: shownByStyle(zip.text('xl/styles.xml')),
    epoch,
  };
  const read = ({ name, relation }: Listed) => {
    const xml = zip.text(relations.get(relation) ?? '');
    if (xml === undefined) throw damaged(`The sheet “${name}” is named by the workbook and not in it.`);
    return readWorksheet(xml, setting);
  };
  const chosen = chooseSheet(sheets, wanted, (sheet) => read(sheet).rows.length > 0);
  const { rows, mergedAreas, withoutValue } = read(chosen);
  return {
    rows,
    notes: [
      ...(sheets.length > 1 ? [`The sheet “${chosen.name}” is read, one of ${sheets.length}.`] : []),
      ...(mergedAreas > 0
        ? [
            `${mergedAreas} merged ${mergedAreas === 1 ? 'area counts' : 'areas count'} as their first cell, all over.`,
          ]
        : []),
      ...(withoutValue.length > 0
        ? [
            `${withoutValue.length} formulas hold no value (${withoutValue.slice(0, 3).join(', ')}): open the workbook in the spreadsheet and save it once.`,
          ]
        : []),
    ],
  };
}

function chooseSheet(
  sheets: readonly Listed[],
  wanted: string | undefined,
  isFilled: (sheet: Listed) => boolean,
): Listed {
  const names = sheets.map(({ name }) => `“${name}”`).join(', ');
  if (wanted !== undefined) {
    const found = sheets.find(({ name }) => name.trim().toLowerCase() === wanted.trim().toLowerCase());
    if (found) return found;
    throw new UnusableSheet(`The workbook has no sheet “${wanted}”.`, `It has: ${names}.`);
  }
  const shown = sheets.filter(({ isHidden }) => !isHidden);
  const filled = shown.length === 1 ? shown : shown.filter(isFilled);
  const [first] = filled;
  if (!first) throw new UnusableSheet('The workbook has no sheet with anything in it.', 'Look at the file.');
  if (filled.length === 1) return first;
  throw new UnusableSheet(
    `The workbook has ${filled.length} sheets with something in them: ${filled.map(({ name }) => `“${name}”`).join(', ')}.`,
    `Say which, one at a time: --sheet "${first.name}".`,
  );
}

/** The files of the sheets by the ids the workbook calls them by. Targets outside the workbook are left alone. */
function relationsOf(zip: Zip): Map<string, string> {
  const relations = new Map<string, string>();
  const xml = zip.text('xl/_rels/workbook.xml.rels');
  if (xml === undefined) throw damaged();
  eachTag(xml, {
    open(name, { Id = '', Target = '', TargetMode }) {
      if (name !== 'Relationship' || TargetMode === 'External') return;
      relations.set(Id, Target.startsWith('/') ? Target.slice(1) : `xl/${Target}`);
    },
  });
  return relations;
}

function sharedTexts(xml: string | undefined): string[] {
  const texts: string[] = [];
  if (xml === undefined) return texts;
  let text = '';
  let within = '';
  let isPhonetic = false;
  eachTag(xml, {
    open(name) {
      if (name === 'si') text = '';
      if (name === 'rPh') isPhonetic = true;
      within = name;
    },
    text(piece) {
      if (within === 't' && !isPhonetic) text += piece;
    },
    close(name) {
      within = '';
      if (name === 'rPh') isPhonetic = false;
      if (name === 'si') texts.push(text);
    },
  });
  return texts;
}
