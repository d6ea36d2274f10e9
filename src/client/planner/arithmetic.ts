/** The arithmetic of a plan as it is shown: sections to unfold, each line with what was put in and where from. */
import type { ArithmeticLine, Given } from '../../decide/plan/line.ts';
import type { Section } from '../../decide/plan/workings.ts';
import { formatQuantity } from '../../measure/format.ts';
import { type LineTexts, lineText } from '../../views/line-texts.ts';
import { profilePath, sourcePath, valueAnchor } from '../../views/paths.ts';
import { filterSetting } from '../../views/plan-words.ts';
import type { PlannerData, PlannerLabels } from '../../views/planner-format.ts';
import { make, makeMath } from '../make.ts';
import { cautionItems, deferralWords } from './caution-items.ts';
import { formulaMark, symbolMark } from './formula-mark.ts';

/** Where links lead. */
export interface Places {
  readonly base: string;
  readonly profile: string;
  readonly sourceTitles: Readonly<Record<string, string>>;
  readonly lineTexts: LineTexts;
  readonly sectionTitles: Readonly<Record<Section['id'], string>>;
  readonly captions: PlannerLabels['captions'];
  readonly advice: PlannerData['advice'];
}

/** A section, folded. */
export function sectionMark(section: Section, places: Places): HTMLDetailsElement {
  const { id, lines, remarks, correction } = section;
  const cautions = cautionItems(lines.flatMap((line) => line.cautions));
  const mark = make(
    'details',
    { class: 'plan-section', id: `section-${id}`, 'data-section': id },
    make('summary', {}, make('span', {}, places.sectionTitles[id], summaryOf(section, places))),
    ...remarks.map((remark) => make('p', { class: 'plan-remark' }, remark)),
    correction && correction.filters.length > 0
      ? make(
          'ol',
          { class: 'plan-filters' },
          ...correction.filters.map((filter) => make('li', {}, filterSetting(filter))),
        )
      : undefined,
    ...lines.map((line) => lineMark(line, places)),
    sourcesOf(section, places),
    cautions.length > 0
      ? make(
          'div',
          { class: 'cautions' },
          make('ul', { class: 'plain' }, ...cautions),
          make('p', { class: 'fine' }, deferralWords()),
        )
      : undefined,
  );
  // A formula too long for a phone is moved sideways: by keys too. Its width is known once it is unfolded.
  mark.addEventListener('toggle', () => {
    for (const formula of mark.querySelectorAll<HTMLElement>('.plan-formula')) {
      if (formula.scrollWidth > formula.clientWidth) formula.tabIndex = 0;
    }
  });
  return mark;
}

/** What comes out first, beside the title of a folded section. */
const headlines: Readonly<Partial<Record<Section['id'], string>>> = {
  gain: 'gain-target',
  headroom: 'boosted-band-clips',
  channels: 'rear-gain',
  bandwidth: 'protective-high-pass',
  correction: 'residual-rms',
  speakers: 'load-impedance',
  supply: 'fuse',
  hearing: 'level-coherent',
};

function summaryOf({ id, lines }: Section, { lineTexts }: Places): HTMLElement | undefined {
  const line = lines.find((one) => one.id === headlines[id]);
  if (!line) return undefined;
  return make(
    'span',
    { class: 'plan-headline' },
    `${lineText(lineTexts, line.id).title}: `,
    make('strong', {}, formatQuantity(line.result)),
  );
}

function lineMark(line: ArithmeticLine, places: Places): HTMLElement {
  const { id, symbol, formula, isInWords, given, result, commonPractice } = line;
  const { title, note } = lineText(places.lineTexts, id);
  return make(
    'div',
    { class: 'plan-line', 'data-line': id },
    make('h4', {}, title),
    isInWords
      ? make('p', { class: 'plan-formula' }, mathOf(symbol), ` = ${formula}`)
      : make('div', { class: 'plan-formula' }, formulaMark(symbol, formula)),
    given.length > 0
      ? make(
          'dl',
          { class: 'plan-given' },
          ...given.map((one) =>
            make(
              'div',
              {},
              make('dt', {}, mathOf(one.symbol), ` ${one.name}`),
              make('dd', {}, putIn(one, places)),
            ),
          ),
        )
      : undefined,
    make(
      'p',
      { class: 'plan-result' },
      mathOf(symbol),
      ' = ',
      make('strong', {}, formatQuantity(result)),
      commonPractice ? make('span', { class: 'practice' }, places.captions.practice) : undefined,
    ),
    make('p', { class: 'fine' }, note),
  );
}

function mathOf(symbol: string): Element {
  return makeMath('math', symbolMark(symbol));
}

function putIn({ quantity, characteristic }: Given, { base, profile }: Places): Node | string {
  const text = formatQuantity(quantity);
  if (characteristic === undefined) return text;
  return make('a', { href: `${base}${profilePath(profile)}#${valueAnchor(characteristic)}` }, text);
}

/** What the values of a section were taken from, once for all its lines. */
function sourcesOf({ lines }: Section, { base, sourceTitles, captions }: Places): HTMLElement | undefined {
  const sources = [...new Set(lines.flatMap((line) => line.sources))];
  if (sources.length === 0) return undefined;
  const links = sources.map((id) =>
    make('li', {}, make('a', { href: `${base}${sourcePath(id)}` }, sourceTitles[id] ?? id)),
  );
  return make(
    'div',
    { class: 'plan-sources' },
    make('p', { class: 'label' }, captions.sources),
    make('ul', { class: 'plain links' }, ...links),
  );
}
