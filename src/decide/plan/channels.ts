/** Rear outputs that are silent or weak, and what a summed feed for the missing ones needs. */
import type { Characteristic } from '../../measure/index.ts';
import { phrase } from '../../words/index.ts';
import { type ArithmeticLine, given, measured, workedOut } from './line.ts';

export interface RearState {
  /** `none` where the unit has no rear outputs, `muted` where they were found silent, `unknown` where not read. */
  readonly rear: 'none' | 'muted' | 'plays' | 'unknown';
  readonly mutedChannels: readonly string[];
}

/** What there is at the rear: the outputs the unit has, those found silent, and the level where it was read. */
export function rearState(
  channels: readonly string[],
  mutedChannels: readonly string[],
  rearToFront: Characteristic | undefined,
): RearState {
  const rear = channels.filter((one) => one.startsWith('R'));
  const muted = rear.filter((one) => mutedChannels.includes(one));
  const state = (of: RearState['rear']): RearState => ({ rear: of, mutedChannels: muted });
  if (rear.length === 0) return state('none');
  if (rearToFront?.bound === 'at-most' || muted.length === rear.length) return state('muted');
  return state(rearToFront ? 'plays' : 'unknown');
}

/** By how much the rear gain is to be raised over the front's for both to play alike, dB; negative: lowered. */
export function rearGain(rearToFront: Characteristic): ArithmeticLine {
  return workedOut({
    id: 'rear-gain',
    title: phrase('Gain of the rear channels over the front ones for an even level'),
    symbol: 'G_rear',
    formula: '0 − D',
    given: [measured('D', phrase('rear relative to front'), rearToFront)],
    unit: 'dB',
    bound: rearToFront.bound === 'at-most' ? 'at-least' : 'exact',
    note: phrase('For equal speakers at equal distance. Noise of the rear outputs is raised by as much.'),
  });
}

/** A passive sum: one equal resistor from each of `sources` outputs to a common point, which feeds one input. */
export interface SummedFeed {
  readonly feeds: number;
  readonly resistorOhms: number;
  /** What the input of the amplifier or converter presents. */
  readonly inputOhms: number;
  /** Clean volts of one output, for the power the resistor turns to heat. */
  readonly cleanVolts: Characteristic;
}

/** Levels, load and heat of a summed feed (Kirchhoff's current law at the common point; Millman's theorem). */
export function summedFeed({
  feeds,
  resistorOhms,
  inputOhms,
  cleanVolts,
}: SummedFeed): readonly ArithmeticLine[] {
  const network = [
    given('n', phrase('outputs summed'), feeds, '1'),
    given('R', phrase('resistor from each output'), resistorOhms, 'Ω'),
    given('Z_in', phrase('input fed'), inputOhms, 'Ω'),
  ];
  const bridged = phrase(
    'Outputs that are bridged are summed only where both legs of each have their own resistors and the input floats, or behind a converter with an isolated input.',
  );
  const cautions = ['bridged-outputs', 'disconnect-battery'] as const;
  return [
    workedOut({
      id: 'sum-of-alike',
      title: phrase('Level of the sum where all outputs play the same'),
      symbol: 'L_same',
      formula: '20·lg(n/(n + R/Z_in))',
      given: network,
      unit: 'dB',
      note: `${phrase('Relative to one output.')} ${bridged}`,
      cautions,
    }),
    workedOut({
      id: 'sum-of-one',
      title: phrase('Level of the sum where one output plays alone'),
      symbol: 'L_one',
      formula: '20·lg(1/(n + R/Z_in))',
      given: network,
      unit: 'dB',
      note: `${phrase('Relative to that output: what is on one side only is this much lower.')} ${bridged}`,
      cautions,
    }),
    workedOut({
      id: 'sum-load',
      title: phrase('Lowest load on one output'),
      symbol: 'Z_out',
      formula: 'R + 1/((n − 1)/R + 1/Z_in)',
      given: network,
      unit: 'Ω',
      bound: 'at-least',
      note: phrase(
        'Where the other outputs are silent and take its current. An output of a head unit drives far lower loads; some of them look for a speaker and mute without one, and then need a load resistor.',
      ),
      cautions,
    }),
    workedOut({
      id: 'sum-resistor-power',
      title: phrase('Most power in one of the resistors'),
      symbol: 'P_R',
      formula: 'V^2/R',
      given: [measured('V', phrase('clean volts of one output'), cleanVolts), ...network.slice(1, 2)],
      unit: 'W',
      bound: 'at-most',
      note: phrase(
        'With the far end at zero. Take a resistor rated for at least twice this: common practice, no source.',
      ),
      cautions,
      commonPractice: true,
    }),
  ];
}
