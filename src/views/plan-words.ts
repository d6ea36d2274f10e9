/** Words for what a plan comes to: for the page and for the command alike. */
import type { Change } from '../decide/plan/changes.ts';
import type { ArithmeticLine } from '../decide/plan/line.ts';
import type { PlanQuery, Purchase } from '../decide/plan/query.ts';
import type { Stage } from '../decide/plan/stages.ts';
import type { SectionId } from '../decide/plan/workings.ts';
import { type Filter, formatHz, formatNumber, formatQuantity } from '../measure/index.ts';
import { lineText, lineTexts } from './line-texts.ts';

export const sectionTitles: Readonly<Record<SectionId, string>> = {
  gain: 'Setting the gain',
  headroom: 'Where the bass clips',
  channels: 'Rear speakers',
  bandwidth: 'Bass and small speakers',
  correction: 'Equaliser settings',
  speakers: 'Speakers on the amplifier',
  supply: 'Current, fuse and wire',
  hearing: 'How loud at your ear',
  'carry-over': 'The code in the other unit',
};

/** Names of what the words are about: the code of a profile by its id. */
export interface Names {
  readonly code: (profile: string) => string;
}

/** What to change: “Rear speakers: Lid speaker”. Begins with a capital. */
export function changeWords(change: Change, { code }: Names): string {
  switch (change.change) {
    case 'amplifier':
      return `Take another amplifier: ${change.to.name}`;
    case 'front':
      return `Take other front speakers: ${change.to.name}`;
    case 'rear':
      return `Take other rear speakers: ${change.to.name}`;
    case 'leave-out-rear':
      return 'Leave the rear speakers out';
    case 'profile':
      return `Have the profile changed to ${code(change.to)}`;
  }
}

/** Several changes together, in one phrase. */
export function changesWords(changes: readonly Change[], names: Names): string {
  const [first = '', ...rest] = changes.map((one) => changeWords(one, names));
  return [first, ...rest.map((words) => `${words.charAt(0).toLowerCase()}${words.slice(1)}`)].join(', and ');
}

export const purchaseWords: Readonly<Record<Purchase, string>> = {
  amplifier: 'The amplifier',
  front: 'The front speakers',
  rear: 'The rear speakers',
  subwoofer: 'The subwoofer',
};

/** What is bought at a stage: “The rear speakers: Lid speaker”. */
export function stageWords({ buy }: Stage, query: PlanQuery): string {
  const bought = query[buy];
  return bought ? `${purchaseWords[buy]}: ${bought.name}` : purchaseWords[buy];
}

/** A line in plain text: “Volts at the amplifier’s rated power: V_full = √(P·Z) = 17.3 V”. */
export function lineWords({ id, symbol, formula, isLookedUp, result }: ArithmeticLine): string {
  const { title } = lineText(lineTexts(), id);
  const how = isLookedUp ? '' : `${formula} = `;
  return `${title}: ${symbol} = ${how}${formatQuantity(result)}`;
}

const filterWords = {
  peaking: 'Peak or dip',
  'low-shelf': 'Low shelf',
  'high-shelf': 'High shelf',
  'high-pass': 'High-pass',
} as const;

/** A filter as it is to be entered: “Peak or dip, 61 Hz, −5.2 dB, Q 1.1”. */
export function filterSetting({ kind, hz, gainDb, q }: Filter): string {
  const gain = kind === 'high-pass' ? '' : `, ${formatNumber(gainDb, 1)}\u00a0dB`;
  return `${filterWords[kind]}, ${formatHz(hz)}${gain}, Q\u00a0${formatNumber(q, 2)}`;
}
