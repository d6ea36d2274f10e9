/** What a column of a decision table knows of a profile rests on: the value, its row on the page, its readings. */
import type { TableEntryInput } from '../../schemas/index.ts';
import { type JudgedProfile, numberBehind } from '../decide/index.ts';
import { type Characteristic, formatQuantity, neededFor, underMainConditions } from '../measure/index.ts';
import { phrase } from '../words/index.ts';
import { type ReadingRows, readingRows } from './reading-links.ts';
import { valueAnchorOf } from './value-anchors.ts';

export interface Evidence {
  /** The anchor on the profile’s page where the value stands; empty where it is a fact of the entry. */
  readonly anchor: string;
  /** The value with its uncertainty; empty for facts that are no numbers. */
  readonly quantity: string;
  readonly readings: ReadingRows;
}

/** What is behind a column that speaks of the profile. */
export function evidenceOf(input: TableEntryInput, { output }: JudgedProfile): Evidence {
  const number = numberBehind(input, output);
  if (number) return { ...from(number), quantity: formatQuantity(number) };
  const from0 = input.holds === 'trait' ? behindFact(input.trait) : undefined;
  return { anchor: '', quantity: '', readings: [], ...from0 };

  function from(value: Characteristic): Pick<Evidence, 'anchor' | 'readings'> {
    return { anchor: valueAnchorOf(output, value), readings: readingRows(value.readings) };
  }
  function behindFact(trait: string): Partial<Evidence> | undefined {
    if (trait === 'boost-behaviour') {
      const boosts = underMainConditions(output, 'bass-boost');
      const [first] = boosts;
      return first && { ...from(first), readings: readingRows(boosts.flatMap((one) => one.readings)) };
    }
    const rear = output.characteristics.find(({ name }) => name === 'rear-to-front');
    return trait === 'rear-outputs' && rear ? from(rear) : undefined;
  }
}

/** Which readings would settle a value: finer ones where there are some, else those that are missing. */
export function settlingWords(input: TableEntryInput, isMeasured: boolean): string {
  const needed = neededOf(input);
  return isMeasured ? phrase('{readings}, taken again with a finer meter', { readings: needed }) : needed;
}

function neededOf(input: TableEntryInput): string {
  if (input.holds === 'characteristic') return neededFor(input.characteristic);
  if (input.holds !== 'trait') return '';
  switch (input.trait) {
    case 'greatest-bass-boost':
      return neededFor('bass-boost');
    case 'boost-behaviour':
      return phrase('{readings}, and the same at a second one', { readings: neededFor('bass-boost') });
    case 'rear-outputs':
      return neededFor('rear-to-front');
    default:
      return phrase('an entry that says so');
  }
}
