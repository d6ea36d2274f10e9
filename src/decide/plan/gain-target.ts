/** Setting an amplifier's gain: which volume step, which tone, and which voltage at its output. */
import { type Characteristic, quantity } from '../../measure/index.ts';
import { phrase } from '../../words/index.ts';
import { type ArithmeticLine, carried, given, lookedUp, measured, type Refusal, workedOut } from './line.ts';

/** How a gain is to be set. */
export interface GainPlan {
  /** Rated power of the channel into `loadOhms`, and where it is stated. */
  readonly ratedWatts: number;
  readonly loadOhms: number;
  readonly sources: readonly string[];
  /**
   * How much more gain than a full-scale tone calls for, dB, because music is seldom recorded at full scale: common
   * practice, no source. 0 never clips.
   */
  readonly overlapDb: number;
  /** Level of the test tone, dB of a full-scale sine. */
  readonly toneDbfs: number;
}

/** The most overlap that is set, dB: common practice, no source. */
export const mostOverlapDb = 15;

/** The step to set the gain at: at the lower end of the highest clean step's range, for a tone no louder than the bench's. */
export function gainStep(cleanStep: Characteristic, toneDbfs: number): ArithmeticLine | Refusal {
  const benchDbfs = cleanStep.conditions.signalDbfs;
  if (toneDbfs > benchDbfs) {
    return {
      refused: phrase(
        'The clean step was found with a tone of {db} dB of full scale. A louder tone may clip there: take one of at most {db} dB.',
        { db: benchDbfs },
      ),
    };
  }
  return lookedUp(
    {
      id: 'gain-step',
      title: phrase('Volume step to set the gain at'),
      symbol: 'N',
      formula: 'floor(N_clean − U_N)',
      given: [
        measured('N_clean', phrase('highest clean step'), cleanStep),
        given('U_N', phrase('its range'), cleanStep.expandedUncertainty, 'step'),
      ],
      note: phrase(
        'At this step or a lower one the unit itself does not clip, so that what is set is the amplifier’s gain. Tone controls stand at their middle. For a bass tone take the step at which the boosted band is clean.',
      ),
      cautions: ['parked', 'battery-drain'],
    },
    quantity(Math.floor(cleanStep.value - cleanStep.expandedUncertainty), 'step', [], 'at-most'),
  );
}

/** The voltage to set at the amplifier's output, and what the tone must not exceed. */
export function gainTarget(plan: GainPlan): readonly ArithmeticLine[] | Refusal {
  const { ratedWatts, loadOhms, overlapDb, toneDbfs, sources } = plan;
  if (overlapDb < 0 || overlapDb > mostOverlapDb) {
    return { refused: phrase('An overlap of 0 to {most} dB can be set.', { most: mostOverlapDb }) };
  }
  const overlap = given('G', phrase('overlap allowance'), overlapDb, 'dB');
  const tone = workedOut({
    id: 'tone-level',
    title: phrase('Level the test tone must not exceed, of full scale'),
    symbol: 'L_max',
    formula: '0 − G',
    given: [overlap],
    unit: 'dB',
    bound: 'at-most',
    note: phrase(
      'With this overlap the amplifier is at full power when the recording is this far below full scale; a louder tone would clip it.',
    ),
    commonPractice: true,
  });
  if (toneDbfs > tone.result.value) {
    return {
      refused: phrase(
        'With an overlap of {overlap} dB a tone of {tone} dB of full scale would clip the amplifier: take one of at most {most} dB.',
        { overlap: overlapDb, tone: toneDbfs, most: tone.result.value },
      ),
    };
  }
  const full = fullPowerVolts(ratedWatts, loadOhms, sources);
  const target = workedOut({
    id: 'gain-target',
    title: phrase('Voltage to set at the amplifier’s output'),
    symbol: 'V_set',
    formula: 'V_full·10^((L + G)/20)',
    given: [
      carried(phrase('volts at rated power'), full),
      given('L', phrase('level of the test tone, of full scale'), toneDbfs, 'dB'),
      overlap,
    ],
    unit: 'V',
    bound: 'at-most',
    note: phrase(
      'Read with a true-rms meter that is good to the frequency of the tone, runs on its own battery and touches nothing else; loudspeakers are disconnected. The output may be bridged: neither terminal is ground, so never put the clip of a meter or oscilloscope on the chassis.',
    ),
    cautions: ['bridged-outputs', 'hearing', 'battery-drain', 'parked'],
    commonPractice: true,
  });
  return [tone, full, target];
}

/** The volts rms of a power into a load: V = √(P·Z). */
export function fullPowerVolts(
  ratedWatts: number,
  loadOhms: number,
  sources: readonly string[],
): ArithmeticLine {
  return workedOut({
    id: 'full-power-volts',
    title: phrase('Volts at the amplifier’s rated power'),
    symbol: 'V_full',
    formula: '√(P·Z)',
    given: [
      given('P', phrase('rated power'), ratedWatts, 'W', sources),
      given('Z', phrase('rated impedance of the load'), loadOhms, 'Ω', sources),
    ],
    unit: 'V',
    note: phrase('From P = V²/Z for volts rms into the rated impedance.'),
  });
}
