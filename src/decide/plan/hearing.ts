/** Sound pressure level at the rider's ear, and how long it may last. */
import { phrase } from '../../words/index.ts';
import { type ArithmeticLine, carried, given, workedOut } from './line.ts';

/** Speakers all alike, at one distance, each with the same power. */
export interface Listening {
  /** Sensitivity, dB re 20 µPa at 1 m. */
  readonly sensitivityDb: number;
  /** What the sensitivity was measured with: 1 W, or 2.83 V whatever the impedance. */
  readonly at: '1 W' | '2.83 V';
  readonly ratedOhms: number;
  /** Mean power of each speaker; one-eighth of the rated power stands for music (16 CFR 432.3(c)). */
  readonly watts: number;
  readonly distanceM: number;
  readonly speakers: number;
  readonly sources: readonly string[];
}

/** Levels, loudest assumption last, and the daily time NIOSH allows. */
export function hearing(listening: Listening): readonly ArithmeticLine[] {
  const { sensitivityDb, at, ratedOhms, watts, distanceM, speakers, sources } = listening;
  const own = at === '1 W' ? undefined : oneWatt(sensitivityDb, ratedOhms, sources);
  const sensitivity = own
    ? carried(phrase('sensitivity at 1 W, 1 m'), own)
    : given('S', phrase('sensitivity at 1 W, 1 m'), sensitivityDb, 'dB', sources);
  const one = workedOut({
    id: 'level-of-one',
    title: phrase('Sound pressure level of one speaker at the ear'),
    symbol: 'L_one',
    formula: 'S + 10·lg(P) − 20·lg(r)',
    given: [
      sensitivity,
      given('P', phrase('mean power of the speaker, over 1 W'), watts, 'W', sources),
      given('r', phrase('distance to the ear, over 1 m'), distanceM, 'm'),
    ],
    unit: 'dB',
    note: phrase(
      'Re 20 µPa, in the free field: from a small source, without reflections or a windscreen, at frequencies the sensitivity holds for. A fairing may add some decibels. Speakers give a little less at full power as their coils get hot.',
    ),
    cautions: ['hearing'],
  });
  const count = given('n', phrase('speakers'), speakers, '1');
  const alone = carried(phrase('level of one speaker'), one);
  const incoherent = workedOut({
    id: 'level-incoherent',
    title: phrase('Level of all speakers, each playing its own signal'),
    symbol: 'L_inc',
    formula: 'L_one + 10·lg(n)',
    given: [alone, count],
    unit: 'dB',
    note: phrase(
      'Powers add where the signals have nothing to do with each other, as most of the treble does at the ear.',
    ),
    cautions: ['hearing'],
  });
  const coherent = workedOut({
    id: 'level-coherent',
    title: phrase('Level of all speakers, all playing the same in step'),
    symbol: 'L_coh',
    formula: 'L_one + 20·lg(n)',
    given: [alone, count],
    unit: 'dB',
    bound: 'at-most',
    note: phrase(
      'Pressures add where all speakers play the same and their sound arrives in step, as bass does.',
    ),
    cautions: ['hearing'],
  });
  return [...(own ? [own] : []), one, incoherent, coherent, allowedTime(coherent)];
}

/** Brings a sensitivity at 2.83 V to one at 1 W: 2.83 V is √(8 W·Ω), hence 8/Z watts. */
function oneWatt(sensitivityDb: number, ratedOhms: number, sources: readonly string[]): ArithmeticLine {
  return workedOut({
    id: 'one-watt-sensitivity',
    title: phrase('Sensitivity at 1 W, 1 m'),
    symbol: 'S',
    formula: 'S_V − 10·lg(8/Z)',
    given: [
      given('S_V', phrase('sensitivity at 2.83 V, 1 m'), sensitivityDb, 'dB', sources),
      given('Z', phrase('rated impedance'), ratedOhms, 'Ω', sources),
    ],
    unit: 'dB',
    note: phrase('2.83 V is 1 W into 8 Ω; into a lower impedance the same volts are more watts.'),
  });
}

/** Minutes a day at a level, after which hearing is at risk. */
export function allowedTime(level: ArithmeticLine): ArithmeticLine {
  return workedOut({
    id: 'allowed-time',
    title: phrase('Longest time a day at this level'),
    symbol: 'T',
    formula: `min(1440, 480/2^((${level.symbol} − 85)/3))`,
    given: [carried(phrase('sound pressure level'), level)],
    unit: 'min',
    bound: 'at-most',
    note: phrase(
      'NIOSH 98-126: eight hours at 85 dB(A), half as long for every 3 dB more. The level here is not A-weighted, which errs to the safe side for bass. Wind and engine come on top; this is a limit for workers, with risk left below it.',
    ),
    cautions: ['hearing'],
  });
}
