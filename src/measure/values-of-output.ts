/** An output of which its values are held, and nothing they were made from. */
import { missingFrom } from './missing.ts';
import type {
  BoostBehaviour,
  Characteristic,
  CharacteristicName,
  Conditions,
  ProfileOutput,
  Quantity,
} from './quantity.ts';

/**
 * The same output, to be held by the ten thousand: values with their uncertainties and readings, a small part of the
 * whole. Budgets, levels by step, responses and the like, which few ask for, come from `whole`, which may work them out
 * again: `whole` gives the same output each time.
 */
export function valuesOfOutput(output: ProfileOutput, whole: () => ProfileOutput): ProfileOutput {
  return new ValuesOfOutput(output, whole);
}

class ValuesOfOutput implements ProfileOutput {
  readonly profile: string;
  readonly characteristics: readonly Characteristic[];
  readonly others: readonly Characteristic[];
  readonly boostBehaviour: BoostBehaviour;
  readonly mutedChannels: readonly string[];
  readonly conditions: Conditions | undefined;
  readonly sessions: readonly string[];
  readonly missing: ProfileOutput['missing'];
  readonly #whole: () => ProfileOutput;

  constructor(output: ProfileOutput, whole: () => ProfileOutput) {
    this.profile = output.profile;
    this.characteristics = output.characteristics.map(
      (one, at) => new HeldValue(one, whole, 'characteristics', at),
    );
    this.others = output.others.map((one, at) => new HeldValue(one, whole, 'others', at));
    this.boostBehaviour = output.boostBehaviour;
    this.mutedChannels = output.mutedChannels;
    this.conditions = output.conditions;
    this.sessions = output.sessions;
    // Made anew: that of the output holds all it was found out from.
    this.missing = missingFrom(this.characteristics);
    this.#whole = whole;
  }

  get levelByStep(): ProfileOutput['levelByStep'] {
    return this.#whole().levelByStep;
  }

  get stepLaw(): ProfileOutput['stepLaw'] {
    return this.#whole().stepLaw;
  }

  get responses(): ProfileOutput['responses'] {
    return this.#whole().responses;
  }

  get normalised(): ProfileOutput['normalised'] {
    return this.#whole().normalised;
  }

  get agreement(): ProfileOutput['agreement'] {
    return this.#whole().agreement;
  }
}

class HeldValue implements Characteristic {
  readonly name: CharacteristicName;
  readonly value: number;
  readonly unit: Quantity['unit'];
  readonly bound: Quantity['bound'];
  readonly standardUncertainty: number;
  readonly coverageFactor: number;
  readonly conditions: Conditions;
  readonly readings: readonly string[];
  readonly sources: readonly string[];
  readonly #whole: () => ProfileOutput;
  readonly #list: 'characteristics' | 'others';
  readonly #at: number;

  constructor(
    value: Characteristic,
    whole: () => ProfileOutput,
    list: 'characteristics' | 'others',
    at: number,
  ) {
    this.name = value.name;
    this.value = value.value;
    this.unit = value.unit;
    this.bound = value.bound;
    this.standardUncertainty = value.standardUncertainty;
    this.coverageFactor = value.coverageFactor;
    this.conditions = value.conditions;
    this.readings = value.readings;
    this.sources = value.sources;
    this.#whole = whole;
    this.#list = list;
    this.#at = at;
  }

  get expandedUncertainty(): number {
    return this.coverageFactor * this.standardUncertainty;
  }

  get budget(): Quantity['budget'] {
    return (this.#whole()[this.#list][this.#at] as Characteristic).budget;
  }
}
