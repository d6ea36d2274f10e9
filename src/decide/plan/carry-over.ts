/** Whether the old profile's code goes into a replacement unit. */
import type { Profile } from '../../../schemas/index.ts';
import { phrase } from '../../words/index.ts';

/** A rule of the shop held against a plan: no arithmetic, only what follows and why. */
export interface RuleLine {
  readonly id: string;
  readonly title: string;
  readonly holds: boolean;
  readonly text: string;
  readonly commonPractice: true;
}

/** Only with a factory amplifier that stays, and never an unamplified profile's. Common practice, no source. */
export function carryOver(system: Profile['system'], keepsFactoryAmplifier: boolean): RuleLine {
  const rule = (holds: boolean, text: string): RuleLine => ({
    id: 'carry-over',
    title: phrase('The old code in the replacement unit'),
    holds,
    text,
    commonPractice: true,
  });
  if (system === 'unamplified') {
    return rule(
      false,
      phrase(
        'Do not carry the old code over: it is an unamplified profile’s, made for speakers straight off the old unit.',
      ),
    );
  }
  if (!keepsFactoryAmplifier) {
    return rule(
      false,
      phrase('Do not carry the old code over: it is made for the factory amplifier, and that does not stay.'),
    );
  }
  return rule(true, phrase('Carry the old code over: the factory amplifier it is made for stays.'));
}
