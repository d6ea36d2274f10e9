/** Levels of the volume scale, as a plan needs them. */
import type { Component, Quantity, StepLawPart } from '../../measure/index.ts';
import { phrase } from '../../words/index.ts';
import { type ArithmeticLine, type Given, given, workedOut } from './line.ts';

/** What is known of a volume scale: an output has it. */
export interface VolumeScale {
  readonly levelByStep: readonly {
    readonly step: number;
    readonly volts: Quantity;
    readonly readings: readonly string[];
  }[];
  readonly stepLaw: readonly StepLawPart[];
}

/** The words of a line about a change from one step to another. */
type Words = Pick<ArithmeticLine, 'id' | 'title' | 'symbol' | 'note'>;

/**
 * By how much the level at 1 kHz changes from one clean step to another, dB: from the volts read at both, else by the
 * step law. Undefined where neither reaches.
 * `own` is added to its uncertainty, dB.
 */
export function levelChange(
  scale: VolumeScale,
  fromStep: number,
  toStep: number,
  words: Words,
  { sources = [], own = [] }: { sources?: readonly string[]; own?: readonly Component[] } = {},
): ArithmeticLine | undefined {
  const at = (step: number) => scale.levelByStep.find((one) => one.step === step);
  const [from, to] = [at(fromStep), at(toStep)];
  if (from && to) {
    const voltsOf = (symbol: string, { step, volts, readings }: typeof from): Given => ({
      ...given(symbol, phrase('volts at step {step}', { step }), volts, 'V', sources),
      readings,
    });
    return workedOut({
      ...words,
      formula: '20·lg(V_to/V_from)',
      given: [voltsOf('V_from', from), voltsOf('V_to', to)],
      unit: 'dB',
      own,
    });
  }
  const [low, high] = [Math.min(fromStep, toStep), Math.max(fromStep, toStep)];
  const parts = scale.stepLaw.flatMap(({ fromStep: start, toStep: end, stepSize }) => {
    const steps = Math.min(end, high) - Math.max(start, low);
    return steps > 0 ? [{ steps: toStep < fromStep ? -steps : steps, stepSize }] : [];
  });
  if (parts.reduce((sum, { steps }) => sum + Math.abs(steps), 0) !== high - low) return undefined;
  return workedOut({
    ...words,
    formula: parts.length === 0 ? '0' : parts.map((_, index) => `n_${index + 1}·d_${index + 1}`).join(' + '),
    given: parts.flatMap(({ steps, stepSize }, index) => [
      given(`n_${index + 1}`, phrase('steps up or down'), steps, 'step'),
      given(`d_${index + 1}`, phrase('size of these steps'), stepSize, 'dB/step', sources),
    ]),
    unit: 'dB',
    own,
  });
}
