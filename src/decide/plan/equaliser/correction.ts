/** An equaliser's settings that take a profile's fixed curve back out, and what they leave. */
import type { Refusal } from '../line.ts';
import { type Correction, corrected } from './corrected.ts';
import type { EqualiserLimits } from './limits.ts';
import { fitSettings } from './settings.ts';
import { type Correctable, type Target, toCorrect } from './to-correct.ts';

/** Filters that bring the clean part of a response to the target; refused where one setting cannot fit every volume. */
export function correction(
  output: Correctable,
  limits: EqualiserLimits,
  target?: Target,
): Correction | Refusal {
  const asked = toCorrect(output, target);
  return 'refused' in asked ? asked : corrected(asked, fitSettings(asked.wrong, limits));
}
