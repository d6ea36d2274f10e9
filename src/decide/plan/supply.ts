/** What amplifiers draw, and whether the machine's charging keeps up. */
import type { Quantity } from '../../measure/index.ts';
import { phrase } from '../../words/index.ts';
import { type ArithmeticLine, carried, given, workedOut } from './line.ts';

export type AmplifierClass = 'AB' | 'D';

/**
 * Efficiency by class at full power and at one-eighth of it: common practice, no source. An ideal class B stage has
 * π/4 = 78.5 % at full power and π/4·√(1/8) = 27.8 % at one-eighth.
 */
export const usualEfficiency: Readonly<
  Record<AmplifierClass, { readonly full: number; readonly music: number }>
> = {
  AB: { full: 0.6, music: 0.25 },
  D: { full: 0.85, music: 0.75 },
};

/** The share of rated power that stands for music (16 CFR 432.3(c)). */
export const musicShare = 1 / 8;

export interface AmplifierSupply {
  readonly amplifierClass: AmplifierClass;
  /** All channels together. */
  readonly ratedWatts: number;
  readonly supplyVolts: number | Quantity;
  readonly sources: readonly string[];
}

/** Current at a full tone and at music duty. */
export function supplyCurrents({
  amplifierClass,
  ratedWatts,
  supplyVolts,
  sources,
}: AmplifierSupply): readonly [fullTone: ArithmeticLine, music: ArithmeticLine] {
  const { full, music } = usualEfficiency[amplifierClass];
  const power = given('P', phrase('rated power of all channels'), ratedWatts, 'W', sources);
  const volts = given('V', phrase('supply at the amplifier'), supplyVolts, 'V');
  const cautions = ['fuse', 'battery-drain'] as const;
  return [
    workedOut({
      id: 'current-full-tone',
      title: phrase('Current at a full tone on all channels'),
      symbol: 'I_full',
      formula: 'P/(η·V)',
      given: [
        power,
        volts,
        given(
          'η',
          phrase('usual efficiency of class {letter} at full power', { letter: amplifierClass }),
          full,
          '1',
        ),
      ],
      unit: 'A',
      note: phrase('A test tone draws this, music only for moments. The lower the supply, the more current.'),
      commonPractice: true,
      cautions,
    }),
    workedOut({
      id: 'current-music',
      title: phrase('Mean current at music'),
      symbol: 'I_music',
      formula: 'P/8/(η_8·V)',
      given: [
        power,
        volts,
        given(
          'η_8',
          phrase('usual efficiency of class {letter} at one-eighth of its power', { letter: amplifierClass }),
          music,
          '1',
        ),
      ],
      unit: 'A',
      note: phrase(
        'One-eighth of rated power stands for music (16 CFR 432.3(c)); dense music at full volume draws more.',
      ),
      commonPractice: true,
      cautions,
    }),
  ];
}

export interface Charging {
  /** What the generator delivers at the speed ridden. */
  readonly generatorAmperes: number;
  /** What the machine itself takes: ignition, lamps, pumps, unit. */
  readonly machineAmperes: number;
  readonly batteryAmpereHours: number;
  readonly sources: readonly string[];
}

/** How much of the battery may be used before the engine may not start, as a share: common practice, no source. */
const usableShare = 0.5;

/** What is left of the charging current, and how long the battery lasts without the engine. */
export function charging(
  { generatorAmperes, machineAmperes, batteryAmpereHours, sources }: Charging,
  music: ArithmeticLine,
): readonly ArithmeticLine[] {
  const machine = given('I_mc', phrase('current of the machine itself'), machineAmperes, 'A', sources);
  const amplifiers = carried(phrase('mean current of the amplifiers'), music);
  const draws = amplifiers.symbol;
  return [
    workedOut({
      id: 'charging-surplus',
      title: phrase('Charging current left over while riding'),
      symbol: 'I_left',
      formula: `I_gen − I_mc − ${draws}`,
      given: [
        given('I_gen', phrase('current of the generator'), generatorAmperes, 'A', sources),
        machine,
        amplifiers,
      ],
      unit: 'A',
      note: phrase('Below 0 A the battery drains while riding. At idle the generator delivers far less.'),
      cautions: ['battery-drain'],
    }),
    workedOut({
      id: 'battery-time',
      title: phrase('Longest time with the engine off'),
      symbol: 't',
      formula: `k·C/(I_mc + ${draws})`,
      given: [
        given('k', phrase('share of the battery that may be used'), usableShare, '1'),
        given('C', phrase('capacity of the battery'), batteryAmpereHours, 'A·h', sources),
        machine,
        amplifiers,
      ],
      unit: 'h',
      bound: 'at-most',
      note: phrase(
        'With the ignition on as while riding. A battery that is old or cold holds less than is printed on it.',
      ),
      commonPractice: true,
      cautions: ['battery-drain'],
    }),
  ];
}
