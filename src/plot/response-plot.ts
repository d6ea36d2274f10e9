/** The frequency response at several volume steps, relative to 1 kHz, on a third-octave grid. */
import { scaleLinear, scaleLog } from 'd3-scale';
import { area, line } from 'd3-shape';
import { phrase } from '../words/index.ts';
import { frame, type PlacedTick, round } from './frame.ts';
import { spread } from './label-places.ts';
import { decibelTicks, thirdOctaveTicks } from './ticks.ts';

export interface ResponsePoint {
  readonly hz: number;
  /** Level relative to 1 kHz, dB. */
  readonly levelDb: number;
  /** Expanded uncertainty, dB. */
  readonly uncertaintyDb: number;
}

export interface ResponsePlotData {
  readonly curves: readonly {
    readonly step: number;
    /** What its label says, where not the step. */
    readonly label?: string;
    readonly points: readonly ResponsePoint[];
  }[];
}

export interface ResponsePlot {
  readonly hzTicks: readonly PlacedTick[];
  readonly levelTicks: readonly PlacedTick[];
  /** Where 0 dB, the level at 1 kHz, lies. */
  readonly zeroY: number;
  readonly right: number;
  readonly curves: readonly {
    readonly step: number;
    readonly path: string;
    readonly band: string;
    /** Number of the line style, 0 to 5: each has a dash of its own. */
    readonly style: number;
    readonly end: { readonly x: number; readonly y: number };
    /** What stands beside its end: the words, and before them a piece of the curve’s own line, as a path. */
    readonly label: {
      readonly text: string;
      readonly x: number;
      readonly y: number;
      readonly sample: string;
    };
  }[];
  readonly description: string;
}

/** Line styles that are told apart without colour. */
export const lineStyles = 6;

/** Levels below this are cut off: what is left there is noise, dB. */
const floorDb = -36;

/** Room for a label of the usual length; a longer one takes more, by the width of a letter of the label face. */
const labelRoom = 40;
const letterWidth = 6.4;

/** From the end of the axis to the piece of line before a label, its length, and from the axis to the label. */
const sampleGap = 6;
const sampleLength = 22;
const labelOffset = sampleGap + sampleLength + 4;
const labelGap = 14;

/** Lays the plot out. At least one curve with at least one point. */
export function responsePlot({ curves }: ResponsePlotData): ResponsePlot {
  const all = curves.flatMap((curve) => curve.points);
  const lowestHz = Math.min(20, ...all.map((point) => point.hz));
  const highestHz = Math.max(20_000, ...all.map((point) => point.hz));
  const lowestDb = Math.max(
    floorDb,
    Math.min(-6, ...all.map((point) => point.levelDb - point.uncertaintyDb)),
  );
  const highestDb = Math.max(6, ...all.map((point) => point.levelDb + point.uncertaintyDb));
  const bottomDb = Math.floor(lowestDb / 3) * 3;
  const topDb = Math.ceil(highestDb / 3) * 3;

  const texts = curves.map(({ step, label }) => label ?? phrase('step {step}', { step }));
  const longest = Math.max(0, ...texts.map((text) => text.length));
  const right = frame.right - (labelOffset + Math.max(labelRoom, 2 + letterWidth * longest));
  const x = scaleLog([lowestHz, highestHz], [frame.left, right]);
  const y = scaleLinear([bottomDb, topDb], [frame.bottom, frame.top]).clamp(true);
  const path = line<ResponsePoint>()
    .x((point) => x(point.hz))
    .y((point) => y(point.levelDb))
    .digits(1);
  const band = area<ResponsePoint>()
    .x((point) => x(point.hz))
    .y0((point) => y(point.levelDb - point.uncertaintyDb))
    .y1((point) => y(point.levelDb + point.uncertaintyDb))
    .digits(1);

  const ends = curves.map(({ points }) => {
    const last = points.at(-1);
    return { x: round(x(last?.hz ?? highestHz)), y: round(y(last?.levelDb ?? 0)) };
  });
  const labelYs = spread(
    ends.map((end) => end.y),
    labelGap,
    frame.top + 4,
    frame.bottom - 4,
  );
  return {
    hzTicks: thirdOctaveTicks(lowestHz, highestHz).map(({ value, label }) => ({
      at: round(x(value)),
      label,
    })),
    levelTicks: decibelTicks(bottomDb, topDb).map(({ value, label }) => ({ at: round(y(value)), label })),
    zeroY: round(y(0)),
    right: round(right),
    curves: curves.map(({ step, points }, index) => {
      const labelY = round(labelYs[index] ?? frame.top);
      return {
        step,
        path: path(points) ?? '',
        band: band(points) ?? '',
        style: index % lineStyles,
        end: ends[index] ?? { x: right, y: frame.top },
        label: {
          text: texts[index] ?? '',
          x: round(right + labelOffset),
          y: labelY,
          sample: `M${round(right + sampleGap)} ${labelY}h${sampleLength}`,
        },
      };
    }),
    description: describe({ curves }),
  };
}

function describe({ curves }: ResponsePlotData): string {
  return curves
    .map(({ step, label, points }) => {
      const peak = points.reduce((best, point) => (point.levelDb > best.levelDb ? point : best));
      const low = points.reduce((best, point) => (point.levelDb < best.levelDb ? point : best));
      return phrase(
        '{curve}: highest {peakDb} decibels at {peakHz} hertz, lowest {lowDb} decibels at {lowHz} hertz.',
        {
          curve: label ?? phrase('Step {step}', { step }),
          peakDb: peak.levelDb.toFixed(1),
          peakHz: Math.round(peak.hz),
          lowDb: low.levelDb.toFixed(1),
          lowHz: Math.round(low.hz),
        },
      );
    })
    .join(' ');
}
