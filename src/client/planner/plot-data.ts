/** What is drawn of a profile and its plan. */
import type { Section } from '../../decide/plan/workings.ts';
import { formatQuantity } from '../../measure/format.ts';
import type { ProfileOutput } from '../../measure/quantity.ts';
import type { LevelPlotData } from '../../plot/level-plot.ts';
import type { ResponsePlotData } from '../../plot/response-plot.ts';
import { phrase } from '../../words/index.ts';

type Curve = ResponsePlotData['curves'][number];

/** Responses at clean steps, the highest step first. */
export function plotPoints({ responses, characteristics }: ProfileOutput): Curve[] {
  const clean = characteristics.find(({ name }) => name === 'highest-clean-step');
  return responses
    .filter(({ step }) => step <= (clean?.value ?? Number.POSITIVE_INFINITY))
    .toSorted((a, b) => b.step - a.step)
    .map(({ step, points }) => ({
      step,
      points: points.map(({ hz, level }) => ({
        hz,
        levelDb: level.value,
        uncertaintyDb: level.expandedUncertainty,
      })),
    }));
}

/** The response as it is, and with the equaliser’s filters; undefined where there is no correction. */
export function correctedCurves(
  output: ProfileOutput,
  correction: NonNullable<Section['correction']>,
): ResponsePlotData | undefined {
  const response = plotPoints(output).find(({ step }) => step === correction.step);
  if (!response) return undefined;
  // Before and after are about their own means: the curve is put where 1 kHz stays at 0 dB.
  const { points } = correction;
  const at = (hz: number) => points.find((point) => Math.abs(point.hz / hz - 1) < 1e-6);
  const reference = at(1000);
  if (!reference) return undefined;
  return {
    curves: [
      { ...response, label: phrase('as it is') },
      {
        step: response.step,
        label: phrase('corrected'),
        points: response.points.flatMap(({ hz, uncertaintyDb }) => {
          const point = at(hz);
          return point ? [{ hz, levelDb: point.afterDb - reference.afterDb, uncertaintyDb }] : [];
        }),
      },
    ],
  };
}

/** Level by step, with the step the gain is set at. */
export function gainLevels(
  output: ProfileOutput,
  volume: { readonly lowestStep: number; readonly highestStep: number },
  sections: readonly Section[],
): LevelPlotData | undefined {
  const points = output.levelByStep.filter(({ volts }) => volts.value > 0);
  if (points.length < 2) return undefined;
  const named = (name: string) => output.characteristics.find((one) => one.name === name);
  const [step, volts] = [named('highest-clean-step'), named('clean-volts')];
  const gain = sections.flatMap(({ lines }) => lines).find(({ id }) => id === 'gain-step');
  return {
    ...volume,
    points: points.map((point) => ({
      step: point.step,
      volts: point.volts.value,
      uncertaintyVolts: point.volts.expandedUncertainty,
      clean: point.clean,
    })),
    clean:
      step && volts
        ? {
            step: step.value,
            volts: volts.value,
            label: formatQuantity(volts),
            reached: step.bound === 'exact',
          }
        : undefined,
    pointed: gain && {
      step: gain.result.value,
      label: phrase('set the gain at {step}', { step: gain.result.value }),
    },
  };
}
