/** The output by volume step: volts on a logarithmic axis, where it is clean and where it clips. */
import { scaleLinear, scaleLog } from 'd3-scale';
import { area, line } from 'd3-shape';
import { phrase } from '../words/index.ts';
import { frame, type PlacedTick, round } from './frame.ts';
import { stepTicks, voltRange, voltTicks } from './ticks.ts';

export interface LevelPoint {
  readonly step: number;
  readonly volts: number;
  /** Expanded uncertainty, volts. */
  readonly uncertaintyVolts: number;
  readonly clean: boolean;
}

export interface LevelPlotData {
  readonly lowestStep: number;
  readonly highestStep: number;
  readonly points: readonly LevelPoint[];
  /** The highest clean step; `reached` is false where it never clipped at the steps measured. */
  readonly clean:
    | { readonly step: number; readonly volts: number; readonly label: string; readonly reached: boolean }
    | undefined;
  /** A step that something is to be done at, and what. */
  readonly pointed?: { readonly step: number; readonly label: string } | undefined;
}

export interface LevelPlot {
  readonly stepTicks: readonly PlacedTick[];
  readonly voltTicks: readonly PlacedTick[];
  /** Outline of the uncertainty band. */
  readonly band: string;
  readonly curve: string;
  /** Steps so far below the next that they are silence, and would only stretch the axis. */
  readonly silent: readonly number[];
  readonly dots: readonly { readonly x: number; readonly y: number; readonly clean: boolean }[];
  /** The clean region, from the left edge to the highest clean step. */
  readonly clean:
    | {
        readonly x: number;
        readonly y: number;
        readonly label: string;
        readonly volts: string;
        readonly anchor: 'start' | 'end';
        readonly reached: boolean;
      }
    | undefined;
  readonly pointed:
    | { readonly x: number; readonly label: string; readonly anchor: 'start' | 'end' }
    | undefined;
  /** What the plot shows, for those who cannot see it. */
  readonly description: string;
}

/** A lowest step this far below the next one is the unit's mute, as a ratio: common practice, no source. */
const muteRatio = 1 / 5;

/** Lays the plot out. At least one point that plays; all volts above 0, as the axis is logarithmic. */
export function levelPlot(data: LevelPlotData): LevelPlot {
  const { lowestStep, highestStep, clean, pointed } = data;
  const [first, second] = data.points;
  const startsSilent = first && second && first.volts < second.volts * muteRatio;
  const points = startsSilent ? data.points.slice(1) : data.points;
  const lowestOf = (point: LevelPoint): number =>
    Math.max(point.volts / 2, point.volts - point.uncertaintyVolts);
  const highestOf = (point: LevelPoint): number => point.volts + point.uncertaintyVolts;
  const [lowest, highest] = voltRange(Math.min(...points.map(lowestOf)), Math.max(...points.map(highestOf)));
  const x = scaleLinear([lowestStep, highestStep], [frame.left, frame.right]);
  const y = scaleLog([lowest, highest], [frame.bottom, frame.top]);

  const band = area<LevelPoint>()
    .x((point) => x(point.step))
    .y0((point) => y(lowestOf(point)))
    .y1((point) => y(highestOf(point)))
    .digits(1);
  const curve = line<LevelPoint>()
    .x((point) => x(point.step))
    .y((point) => y(point.volts))
    .digits(1);

  return {
    stepTicks: stepTicks(lowestStep, highestStep).map(({ value, label }) => ({ at: round(x(value)), label })),
    voltTicks: voltTicks(lowest, highest).map(({ value, label }) => ({ at: round(y(value)), label })),
    silent: startsSilent ? [first.step] : [],
    band: band(points) ?? '',
    curve: curve(points) ?? '',
    dots: points.map((point) => ({
      x: round(x(point.step)),
      y: round(y(point.volts)),
      clean: point.clean,
    })),
    clean: clean && {
      x: round(x(clean.step)),
      y: round(y(clean.volts)),
      label:
        clean.reached && clean.step < highestStep
          ? phrase('clean to {step}', { step: clean.step })
          : phrase('clean at {step}', { step: clean.step }),
      volts: clean.label,
      anchor: x(clean.step) > (frame.left + frame.right) / 2 ? 'end' : 'start',
      reached: clean.reached && clean.step < highestStep,
    },
    pointed: pointed && {
      x: round(x(pointed.step)),
      label: pointed.label,
      anchor: x(pointed.step) > (frame.left + frame.right) / 2 ? 'end' : 'start',
    },
    description: `${describe({ ...data, points })}${pointed ? ` ${pointed.label}.` : ''}`,
  };
}

function describe({ points, clean }: LevelPlotData): string {
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last) return '';
  const range = phrase('From {volts} volts at step {step} to {lastVolts} volts at step {lastStep}.', {
    volts: first.volts.toPrecision(2),
    step: first.step,
    lastVolts: last.volts.toPrecision(3),
    lastStep: last.step,
  });
  if (!clean) return range;
  return clean.reached
    ? `${range} ${phrase('Clean up to step {step}, at {volts}.', { step: clean.step, volts: clean.label })}`
    : `${range} ${phrase('Clean at every step measured.')}`;
}
