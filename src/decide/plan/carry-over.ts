/** Whether the old profile's code goes into a replacement unit. */
import type { Profile } from '../../../schemas/index.ts';
import type { AdviceId } from './advice.ts';

/** A rule of the shop held against a plan: no arithmetic, only what follows and why. */
export interface RuleLine {
  readonly holds: boolean;
  readonly advice: AdviceId;
}

/** Only with a factory amplifier that stays, and never an unamplified profile's. Common practice, no source. */
export function carryOver(system: Profile['system'], keepsFactoryAmplifier: boolean): RuleLine {
  if (system === 'unamplified') return { holds: false, advice: 'carryUnamplified' };
  if (!keepsFactoryAmplifier) return { holds: false, advice: 'carryNotKept' };
  return { holds: true, advice: 'carryOver' };
}
