/** Words for what a plan comes to: for the page and for the command alike. */
import type { Change } from '../decide/plan/changes.ts';
import type { ArithmeticLine } from '../decide/plan/line.ts';
import type { PlanQuery, Purchase } from '../decide/plan/query.ts';
import type { Stage } from '../decide/plan/stages.ts';
import type { SectionId } from '../decide/plan/workings.ts';
import { type Filter, formatHz, formatNumber, formatQuantity } from '../measure/index.ts';
import { phrase } from '../words/index.ts';

export function sectionTitle(id: SectionId): string {
  switch (id) {
    case 'gain':
      return phrase('Setting the gain');
    case 'headroom':
      return phrase('Where the bass clips');
    case 'channels':
      return phrase('Rear speakers');
    case 'bandwidth':
      return phrase('Bass and small speakers');
    case 'correction':
      return phrase('Equaliser settings');
    case 'speakers':
      return phrase('Speakers on the amplifier');
    case 'supply':
      return phrase('Current, fuse and wire');
    case 'hearing':
      return phrase('How loud at your ear');
    case 'carry-over':
      return phrase('The code in the other unit');
  }
}

/** Names of what the words are about: the code of a profile by its id. */
export interface Names {
  readonly code: (profile: string) => string;
}

/** What to change: “Rear speakers: Lid speaker”. Begins with a capital. */
export function changeWords(change: Change, { code }: Names): string {
  switch (change.change) {
    case 'amplifier':
      return phrase('Take another amplifier: {name}', change.to);
    case 'front':
      return phrase('Take other front speakers: {name}', change.to);
    case 'rear':
      return phrase('Take other rear speakers: {name}', change.to);
    case 'leave-out-rear':
      return phrase('Leave the rear speakers out');
    case 'profile':
      return phrase('Have the profile changed to {code}', { code: code(change.to) });
  }
}

/** Several changes together, in one phrase. */
export function changesWords(changes: readonly Change[], names: Names): string {
  const [one = '', ...others] = changes.map((change) => changeWords(change, names));
  return others.reduce(
    (first, next) =>
      phrase('{first}, and {next}', { first, next: `${next.charAt(0).toLowerCase()}${next.slice(1)}` }),
    one,
  );
}

export function purchaseWords(purchase: Purchase): string {
  switch (purchase) {
    case 'amplifier':
      return phrase('The amplifier');
    case 'front':
      return phrase('The front speakers');
    case 'rear':
      return phrase('The rear speakers');
    case 'subwoofer':
      return phrase('The subwoofer');
  }
}

/** What is bought at a stage: “The rear speakers: Lid speaker”. */
export function stageWords({ buy }: Stage, query: PlanQuery): string {
  const bought = query[buy];
  return bought ? `${purchaseWords(buy)}: ${bought.name}` : purchaseWords(buy);
}

/** A line in plain text: “Volts at the amplifier’s rated power: V_full = √(P·Z) = 17.3 V”. */
export function lineWords({ title, symbol, formula, isLookedUp, result }: ArithmeticLine): string {
  const how = isLookedUp ? '' : `${formula} = `;
  return `${title}: ${symbol} = ${how}${formatQuantity(result)}`;
}

function filterWords(kind: Filter['kind']): string {
  switch (kind) {
    case 'peaking':
      return phrase('Peak or dip');
    case 'low-shelf':
      return phrase('Low shelf');
    case 'high-shelf':
      return phrase('High shelf');
    case 'high-pass':
      return phrase('High-pass');
  }
}

/** A filter as it is to be entered: “Peak or dip, 61 Hz, −5.2 dB, Q 1.1”. */
export function filterSetting({ kind, hz, gainDb, q }: Filter): string {
  const gain = kind === 'high-pass' ? '' : `, ${formatNumber(gainDb, 1)}\u00a0dB`;
  return `${filterWords(kind)}, ${formatHz(hz)}${gain}, Q\u00a0${formatNumber(q, 2)}`;
}
