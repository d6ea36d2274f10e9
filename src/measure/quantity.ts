/** A measured value as the GUM (JCGM 100:2008) has it: value, unit, uncertainty, coverage factor. */
import type { CharacteristicName, Unit } from '../../schemas/index.ts';
import type { Component } from './component.ts';
import type { ConsistencyTest } from './consistency.ts';

export { type CharacteristicName, characteristicNames, type Unit } from '../../schemas/index.ts';

/** How a value is meant: as it stands, or as the limit of what could be told. */
export type Bound = 'exact' | 'at-most' | 'at-least';

export interface Quantity {
  readonly value: number;
  readonly unit: Unit;
  /** One standard deviation, in the unit of the value. */
  readonly standardUncertainty: number;
  /** What the standard uncertainty is multiplied by for a coverage of 95 %. */
  readonly coverageFactor: number;
  /** U = k·u: the value lies within ± this with a probability of about 95 %. */
  readonly expandedUncertainty: number;
  readonly bound: Bound;
  /** What the uncertainty is made of, in the unit of the value; empty for counts and bounds. */
  readonly budget: readonly Component[];
}

/** The conditions a value holds under. Only values under like conditions are compared or combined. */
export interface Conditions {
  readonly channel?: string;
  readonly step?: number;
  readonly hz?: number;
  readonly loadOhms: number;
  readonly supplyVolts: number;
  /** Level of the test signal, dB of a full-scale sine. */
  readonly signalDbfs: number;
}

export interface Characteristic extends Quantity {
  readonly name: CharacteristicName;
  readonly conditions: Conditions;
  /** Ids of the readings it was computed from, `session:line`. */
  readonly readings: readonly string[];
  /** Ids of the sources of those readings. */
  readonly sources: readonly string[];
}

/** Level at one volume step, 1 kHz, front left. */
export interface LevelAtStep {
  readonly step: number;
  readonly volts: Quantity;
  /** Mean THD, per cent; null where none was read. */
  readonly thdPercent: number | null;
  readonly clean: boolean;
  readonly readings: readonly string[];
}

/** A stretch of the volume scale over which every step raises the level by the same, within its uncertainty. */
export interface StepLawPart {
  readonly fromStep: number;
  readonly toStep: number;
  /** Decibels a step. */
  readonly stepSize: Quantity;
}

/** Response at one volume step, front left, relative to 1 kHz. */
export interface ResponseAtStep {
  readonly step: number;
  readonly points: readonly {
    readonly hz: number;
    readonly level: Quantity;
    readonly readings: readonly string[];
  }[];
}

/**
 * How bass boost goes with the volume: `none` at any step; `fixed`; `fading` by degrees; `switched` off (or
 * on) between two steps; `changing` where two steps differ and no third tells how; `unknown` from one step.
 */
export type BoostBehaviour = 'none' | 'fixed' | 'fading' | 'switched' | 'changing' | 'unknown';

/** What several sessions say of one level: front left, 1 kHz, at one step. */
export interface SessionAgreement {
  /** The sessions that read it, oldest first. */
  readonly sessions: readonly string[];
  readonly step: number;
  /** The largest |E_n| of any two of them. */
  readonly largestNormalisedError: number;
  readonly test: ConsistencyTest;
  readonly birgeRatio: number;
  /** Whether the χ² test passes. */
  readonly consistent: boolean;
  /** The sessions of the largest consistent subset; all of them where they are consistent. */
  readonly agreeing: readonly string[];
  /** The deviation between benches added to make them consistent, volts; 0 where they are. */
  readonly betweenBenchVolts: number;
}

/** Everything the readings of one profile say about its output, under the main conditions. */
export interface ProfileOutput {
  readonly profile: string;
  /** The headline value of each characteristic that could be computed, in the order of the names. */
  readonly characteristics: readonly Characteristic[];
  /** Values under other conditions (another step, another load), same names. */
  readonly others: readonly Characteristic[];
  /** Empty where 1 kHz on front left was not measured. */
  readonly levelByStep: readonly LevelAtStep[];
  /** The level law of the clean steps, lowest first. */
  readonly stepLaw: readonly StepLawPart[];
  readonly responses: readonly ResponseAtStep[];
  readonly boostBehaviour: BoostBehaviour;
  /** Outputs found silent while the front played. */
  readonly mutedChannels: readonly string[];
  /** The main conditions; undefined where nothing was measured. */
  readonly conditions: Conditions | undefined;
  /** Sessions that measured the profile, oldest first. */
  readonly sessions: readonly string[];
  /** Sessions whose clean levels were brought to the main signal level, and from which, dBFS. */
  readonly normalised: readonly { readonly session: string; readonly fromDbfs: number }[];
  /** How the sessions that read the level at the highest clean step agree; undefined for fewer than two. */
  readonly agreement: SessionAgreement | undefined;
  /** What could not be computed and which readings are missing for it, in plain words. */
  readonly missing: readonly { readonly name: CharacteristicName; readonly reason: string }[];
}
