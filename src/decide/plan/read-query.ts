/** A plan as it stands in an address or on a command line → the plan, or what is wrong with it. */
import { phrase } from '../../words/index.ts';
import {
  type Amplifier,
  type PlanQuery,
  type Purchase,
  purchases,
  type Speaker,
  usualQuery,
} from './query.ts';

/** What can be planned with. */
export interface Catalogue {
  readonly amplifiers: readonly Amplifier[];
  readonly speakers: readonly Speaker[];
}

/** What cannot be read, in the words of whoever wrote it, by the name of the field. */
export interface QueryFault {
  readonly field: string;
  readonly message: string;
  readonly help: string;
}

/** Numbers of a plan and their bounds: least, most. The names are those of addresses and options. */
const numbers = {
  wire: ['wireMetres', 0.1, 10],
  supply: ['supplyVolts', 10, 16],
  ear: ['earMetres', 0.1, 3],
  overlap: ['overlapDb', 0, 15],
  generator: ['generatorAmperes', 1, 100],
  machine: ['machineAmperes', 1, 100],
  battery: ['batteryAmpereHours', 1, 100],
} as const;

/** Numbers that take the place of a class’s own. */
const ofAmplifier = {
  least: ['leastVolts', 0.01, 50],
  most: ['mostVolts', 0.01, 50],
  watts: ['ratedWatts', 1, 5000],
  load: ['ratedOhms', 0.5, 64],
} as const;

/** The names of the fields of a plan, in addresses and on the command line. */
export const queryFields = [
  'fitted',
  'amplifier',
  'front',
  'rear',
  'subwoofer',
  'replacement',
  'first',
  ...Object.keys(numbers),
  ...Object.keys(ofAmplifier),
] as const;

/** Reads a plan. Fields that are not given, or empty, are as usual; a decimal comma is understood. */
export function readQuery(
  fields: Readonly<Record<string, string | undefined>>,
  { amplifiers, speakers }: Catalogue,
): { readonly query: PlanQuery; readonly faults: readonly QueryFault[] } {
  const faults: QueryFault[] = [];
  const chosen = <T extends { readonly id: string }>(field: string, all: readonly T[]): T | undefined => {
    const id = fields[field]?.trim() ?? '';
    if (id === '' || id === 'none') return undefined;
    const found = all.find((one) => one.id === id);
    if (!found) {
      const help =
        all.length === 0
          ? phrase('There are none yet.')
          : phrase('There are: {ids}.', { ids: all.map((one) => one.id).join(', ') });
      faults.push({ field, message: phrase('No class of equipment is called “{id}”.', { id }), help });
    }
    return found;
  };
  const number = (field: string, [, least, most]: readonly [string, number, number]): number | undefined => {
    const text = fields[field]?.trim() ?? '';
    if (text === '') return undefined;
    const value = Number(text.replace(',', '.'));
    if (Number.isFinite(value) && value >= least && value <= most) return value;
    faults.push({
      field,
      message: phrase('“{text}” cannot be used here.', { text }),
      help: phrase('Give a number from {least} to {most}.', { least, most }),
    });
    return undefined;
  };
  const amplifier = chosen('amplifier', amplifiers);
  const ownNumbers = Object.entries(ofAmplifier).flatMap(([field, bounds]) => {
    const value = number(field, bounds);
    return value === undefined ? [] : [[bounds[0], value] as const];
  });
  const planned = Object.entries(numbers).flatMap(([field, bounds]) => {
    const value = number(field, bounds);
    return value === undefined ? [] : [[bounds[0], value] as const];
  });
  const query: PlanQuery = {
    ...usualQuery,
    ...Object.fromEntries(planned),
    fitted: chosen(
      'fitted',
      amplifiers.filter(({ place }) => place === 'factory'),
    ),
    amplifier: amplifier && { ...amplifier, ...Object.fromEntries(ownNumbers) },
    front: chosen(
      'front',
      speakers.filter(({ place }) => place === 'full-range'),
    ),
    rear: chosen(
      'rear',
      speakers.filter(({ place }) => place === 'full-range'),
    ),
    subwoofer: chosen(
      'subwoofer',
      speakers.filter(({ place }) => place === 'subwoofer'),
    ),
    first: firstWish(fields.first, faults),
    replacementUnit: ['yes', 'true', '1', 'on'].includes(fields.replacement?.trim().toLowerCase() ?? ''),
  };
  const range = query.amplifier;
  if (range && range.leastVolts > range.mostVolts) {
    faults.push({
      field: 'least',
      message: phrase('The least input volts are above the most.'),
      help: phrase('Full power with the gain fully up needs the fewer volts.'),
    });
  }
  return { query, faults };
}

function firstWish(text: string | undefined, faults: QueryFault[]): Purchase | undefined {
  const wish = text?.trim() ?? '';
  if (wish === '') return undefined;
  const found = purchases.find((one) => one === wish);
  if (!found) {
    faults.push({
      field: 'first',
      message: phrase('“{wish}” is nothing that is bought for a plan.', { wish }),
      help: phrase('Give one of: {names}.', { names: purchases.join(', ') }),
    });
  }
  return found;
}
