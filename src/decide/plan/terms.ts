/** What a plan asks of a profile, brought down to what verdicts go by. */
import type { Plan } from '../../../schemas/index.ts';

export interface PlanTerms {
  /** What the head unit’s outputs drive. */
  readonly feeds: Plan['feeds'];
  /** Input sensitivity range of the amplifier, volts rms; undefined where speakers are driven. */
  readonly input: { readonly leastVolts: number; readonly mostVolts: number } | undefined;
  readonly rearWanted: boolean;
  /** The most bass boost the speakers are to be given, dB. */
  readonly mostBassBoostDb: number;
  /** The bass must reach down to here, Hz; undefined where it does not matter. */
  readonly highestLowCornerHz: number | undefined;
  /** Whether there is an equaliser that takes a fixed boost back out. */
  readonly canCorrect: boolean;
  /** Whether another unit takes the place of this one. */
  readonly replacementUnit: boolean;
}

/** The terms of a plan riders ask about. */
export function termsOfPlan(plan: Plan): PlanTerms {
  return {
    feeds: plan.feeds,
    input: plan.input,
    rearWanted: plan.rear === 'needed',
    mostBassBoostDb: plan.mostBassBoostDb,
    highestLowCornerHz: plan.highestLowCornerHz,
    canCorrect: plan.canCorrect,
    replacementUnit: false,
  };
}
