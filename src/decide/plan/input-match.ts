/** Clean volts held against what an amplifier's input takes: short or over by how much, and the attenuation needed. */
import { type Characteristic, quantity } from '../../measure/index.ts';
import { phrase } from '../../words/index.ts';
import { sideOf } from '../compare.ts';
import { type ArithmeticLine, given, measured, type Refusal, workedOut } from './line.ts';

/** The input sensitivity range of an amplifier, volts rms: full power with the gain fully up, and fully down. */
export interface InputRange {
  readonly leastVolts: number;
  readonly mostVolts: number;
  readonly sources: readonly string[];
}

export interface InputMatch {
  /** `borderline` where an end of the range lies within the uncertainty. */
  readonly fit: 'short' | 'within' | 'over' | 'borderline';
  readonly lines: readonly ArithmeticLine[];
}

/** How the clean volts of an output suit an input; refused for a silent one. */
export function matchInput(cleanVolts: Characteristic, input: InputRange): InputMatch | Refusal {
  if (cleanVolts.value <= 0)
    return { refused: phrase('The output was silent: there is no level to compare.') };
  const { leastVolts, mostVolts, sources } = input;
  const volts = measured('V', phrase('clean volts of the output'), cleanVolts);
  const least = given('V_min', phrase('input, gain fully up'), leastVolts, 'V', sources);
  const most = given('V_max', phrase('input, gain fully down'), mostVolts, 'V', sources);
  const lines = [
    workedOut({
      id: 'above-least-input',
      title: phrase('Level above what full power needs'),
      symbol: 'D_min',
      formula: '20·lg(V/V_min)',
      given: [volts, least],
      unit: 'dB',
      bound: cleanVolts.bound,
      note: phrase('Below 0 dB the amplifier does not reach full power even with its gain fully up.'),
    }),
    workedOut({
      id: 'above-most-input',
      title: phrase('Level above what the input takes'),
      symbol: 'D_max',
      formula: '20·lg(V/V_max)',
      given: [volts, most],
      unit: 'dB',
      bound: cleanVolts.bound,
      note: phrase('Above 0 dB the amplifier clips before the volume is up, even with its gain fully down.'),
    }),
  ];
  const low = sideOf(cleanVolts, leastVolts);
  const high = sideOf(cleanVolts, mostVolts);
  // A limit met exactly is met; below it even with the whole uncertainty is short.
  const isShort = low === 'below' && cleanVolts.value + cleanVolts.expandedUncertainty < leastVolts;
  if (isShort) lines.push(powerReached(cleanVolts, input));
  if (high !== 'below') lines.push(attenuation(cleanVolts, input));
  const isOpen =
    (low !== 'above' && cleanVolts.value - cleanVolts.expandedUncertainty < leastVolts) ||
    high === 'borderline';
  return { fit: isShort ? 'short' : high === 'above' ? 'over' : isOpen ? 'borderline' : 'within', lines };
}

function powerReached(cleanVolts: Characteristic, input: InputRange): ArithmeticLine {
  return workedOut({
    id: 'power-reached',
    title: phrase('Share of the amplifier’s power that can be reached'),
    symbol: 'p',
    formula: '(V/V_min)^2',
    given: [
      measured('V', phrase('clean volts of the output'), cleanVolts),
      given('V_min', phrase('input, gain fully up'), input.leastVolts, 'V', input.sources),
    ],
    unit: '1',
    bound: cleanVolts.bound,
    note: phrase('Power goes with the square of the volts. It is reached with the gain fully up.'),
  });
}

/** Enough for the highest value the uncertainty allows; never less than none. */
function attenuation(cleanVolts: Characteristic, input: InputRange): ArithmeticLine {
  const { value, expandedUncertainty } = cleanVolts;
  return workedOut({
    id: 'attenuation',
    title: phrase('Attenuation needed between output and input'),
    symbol: 'A',
    formula: 'max(0, 20·lg((V + U_V)/V_max))',
    given: [
      {
        ...measured('V', phrase('clean volts of the output'), cleanVolts),
        quantity: quantity(value, 'V', []),
      },
      given('U_V', phrase('their expanded uncertainty'), expandedUncertainty, 'V'),
      given('V_max', phrase('input, gain fully down'), input.mostVolts, 'V', input.sources),
    ],
    unit: 'dB',
    bound: 'at-least',
    note: phrase(
      'The uncertainty is added, so that this much is enough. Stopping at a lower volume step does the same.',
    ),
  });
}
