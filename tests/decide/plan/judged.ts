/** Profiles made up of a few values, for tests of plans. */
import type { JudgedProfile } from '../../../src/decide/index.ts';
import type { Characteristic, CharacteristicName, ProfileOutput } from '../../../src/measure/index.ts';

export interface MadeUpProfile {
  readonly volts: number;
  readonly boostDb: number;
  readonly cornerHz: number;
  /** Rear against front; −40 or undefined: silent. */
  readonly rearDb: number | undefined;
  readonly behaviour: ProfileOutput['boostBehaviour'];
  readonly system: 'amplified' | 'unamplified';
}

/** @param uncertainty U relative to each value of volts and hertz, and in tens of dB for levels. */
export function judged(values: MadeUpProfile, uncertainty: number): JudgedProfile {
  const { volts, boostDb, cornerHz, rearDb, behaviour, system } = values;
  const isSilent = rearDb === undefined || rearDb === -40;
  const characteristics = [
    characteristic('clean-volts', volts, 'V', volts * uncertainty),
    characteristic('highest-clean-step', 24, 'step', 0),
    characteristic('bass-boost', boostDb, 'dB', 10 * uncertainty),
    characteristic('lower-corner', cornerHz, 'Hz', cornerHz * uncertainty),
    characteristic('rear-to-front', isSilent ? -40 : rearDb, 'dB', isSilent ? 0 : 10 * uncertainty, isSilent),
  ];
  return {
    data: { origin: 'factory', system },
    channels: ['FL', 'FR', 'RL', 'RR'],
    output: {
      profile: 'f/p',
      characteristics,
      others: [],
      levelByStep: [],
      stepLaw: [],
      boostBehaviour: behaviour,
      responses: [],
      mutedChannels: isSilent ? ['RL', 'RR'] : [],
      conditions: { loadOhms: 4, supplyVolts: 14.4, signalDbfs: 0 },
      sessions: ['s'],
      normalised: [],
      agreement: undefined,
      missing: [],
    },
  };
}

function characteristic(
  name: CharacteristicName,
  value: number,
  unit: Characteristic['unit'],
  expandedUncertainty: number,
  isSilent = false,
): Characteristic {
  return {
    name,
    value,
    unit,
    standardUncertainty: expandedUncertainty / 2,
    coverageFactor: 2,
    expandedUncertainty,
    bound: isSilent ? 'at-most' : 'exact',
    budget: [],
    conditions: { step: 24, loadOhms: 4, supplyVolts: 14.4, signalDbfs: 0 },
    readings: ['s:2'],
    sources: ['bench'],
  };
}
