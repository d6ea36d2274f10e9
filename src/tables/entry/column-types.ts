/** What each column of a table entry holds. */
import {
  characteristicUnits,
  type TableEntry,
  type TableEntryInput,
  type TraitName,
  type Unit,
} from '../../../schemas/index.ts';
import type { TableInput, TableOutput, Value, ValueType } from '../table.ts';

/** Units of quantities that are never below nothing. */
const neverNegative: readonly Unit[] = ['V', 'Hz', 'step', 'Ω', 'oct', '%'];

/** What each trait can be. */
const traitTypes: Readonly<Record<TraitName, ValueType>> = {
  system: { kind: 'choice', values: ['amplified', 'unamplified'] },
  origin: { kind: 'choice', values: ['factory', 'dealer-update', 'third-party'] },
  'boost-behaviour': { kind: 'choice', values: ['none', 'fixed', 'fading', 'switched', 'changing'] },
  'rear-outputs': { kind: 'choice', values: ['playing', 'silent', 'none'] },
  'greatest-bass-boost': { kind: 'number', unit: 'dB' },
};

export function inputOf(input: TableEntryInput): TableInput {
  const { id, label } = input;
  const mayBeMissing = 'mayBeMissing' in input && input.mayBeMissing;
  return { id, label, type: inputType(input), mayBeMissing };
}

function inputType(input: TableEntryInput): ValueType {
  switch (input.holds) {
    case 'characteristic': {
      const unit = characteristicUnits[input.characteristic];
      const least = neverNegative.includes(unit) ? 0 : undefined;
      return { kind: 'number', unit, whole: unit === 'step', least };
    }
    case 'trait':
      return traitTypes[input.trait];
    case 'number': {
      const { unit, whole, least, most } = input;
      return { kind: 'number', unit, whole, least, most };
    }
    case 'choice':
      return { kind: 'choice', values: input.values };
    case 'yes-no':
      return { kind: 'yes-no' };
    case 'date':
      return { kind: 'date', least: input.least, most: input.most };
  }
}

export function outputOf(output: TableEntry['outputs'][number]): TableOutput {
  const { id, label } = output;
  const type: ValueType =
    output.holds === 'choice'
      ? { kind: 'choice', values: output.values }
      : output.holds === 'number'
        ? { kind: 'number', unit: output.unit }
        : { kind: output.holds };
  const priorities: readonly Value[] = output.holds === 'choice' ? output.values : [];
  return { id, label, type, priorities, otherwise: output.otherwise };
}
