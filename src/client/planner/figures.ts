/** The figures of a plan, drawn from the same layouts as those of the profile’s page. */
import { frame } from '../../plot/frame.ts';
import { type LevelPlotData, levelPlot } from '../../plot/level-plot.ts';
import { type ResponsePlotData, responsePlot } from '../../plot/response-plot.ts';
import { phrase } from '../../words/index.ts';
import { makeSvg } from '../make.ts';

const { width, height, left, right: frameRight, top, bottom } = frame;

/** Frequency responses over one another. */
export function responseFigure(data: ResponsePlotData, title: string): SVGElement {
  const plot = responsePlot(data);
  const { right } = plot;
  return drawing(
    title,
    plot.description,
    ...plot.hzTicks.flatMap(({ at, label }) => upright(at, label, label === undefined)),
    ...plot.levelTicks.flatMap(({ at, label }) => level(at, label, right, false)),
    makeSvg('path', { class: 'zero-line', d: `M${left} ${plot.zeroY}H${right}` }),
    frameOf(right),
    ...plot.curves.map(({ band }) => makeSvg('path', { class: 'band', d: band })),
    ...plot.curves.flatMap(({ path, style, end, label }) => [
      makeSvg('path', { class: `curve style-${style}`, d: path }),
      makeSvg('path', { class: 'leader', d: `M${end.x} ${end.y}L${right + 6} ${label.y}` }),
      makeSvg('path', { class: `sample style-${style}`, d: label.sample }),
      makeSvg('text', { x: label.x, y: label.y + 4 }, label.text),
    ]),
    axis(phrase('dB relative to 1 kHz, front left'), phrase('Hz, third-octave centres'), right),
  );
}

/** Level by volume step, with the step the gain is set at. */
export function levelFigure(data: LevelPlotData, title: string): SVGElement {
  const plot = levelPlot(data);
  const { clean, pointed } = plot;
  const half = bottom - top;
  return drawing(
    title,
    plot.description,
    clean && makeSvg('rect', { class: 'clean-region', x: left, y: top, width: clean.x - left, height: half }),
    ...plot.voltTicks.flatMap(({ at, label }) => level(at, label, frameRight, label === undefined)),
    ...plot.stepTicks.flatMap(({ at, label }) => upright(at, label, false)),
    frameOf(frameRight),
    makeSvg('path', { class: 'band', d: plot.band }),
    makeSvg('path', { class: 'curve', d: plot.curve }),
    ...plot.dots.map(({ x, y, clean: isClean }) =>
      makeSvg('circle', { class: isClean ? 'dot' : 'dot open', cx: x, cy: y, r: 2.6 }),
    ),
    clean && marked(clean.x, clean.anchor, clean.label, clean.volts, bottom - 30),
    pointed && marked(pointed.x, pointed.anchor, pointed.label, undefined, bottom - 60, 'mark pointed'),
    axis(phrase('V rms, front left, 1 kHz'), phrase('volume step'), frameRight),
  );
}

function marked(
  x: number,
  anchor: 'start' | 'end',
  label: string,
  value: string | undefined,
  y: number,
  line = 'mark',
): SVGElement {
  const at = x + (anchor === 'end' ? -10 : 10);
  return makeSvg(
    'g',
    { class: 'mark-label', 'text-anchor': anchor },
    makeSvg('path', { class: line, d: `M${x} ${top}V${bottom}` }),
    makeSvg('text', { x: at, y }, label),
    value === undefined ? undefined : makeSvg('text', { class: 'strong', x: at, y: y + 17 }, value),
  );
}

function drawing(
  title: string,
  description: string,
  ...children: readonly (SVGElement | undefined)[]
): SVGElement {
  return makeSvg(
    'svg',
    {
      class: 'plot',
      viewBox: `0 0 ${width} ${height}`,
      role: 'img',
      'aria-label': `${title}. ${description}`,
    },
    ...children,
  );
}

function upright(at: number, label: string | undefined, isFine: boolean): SVGElement[] {
  const rule = makeSvg('path', { class: isFine ? 'grid fine-grid' : 'grid', d: `M${at} ${top}V${bottom}` });
  if (label === undefined) return [rule];
  return [rule, makeSvg('text', { x: at, y: bottom + 17, 'text-anchor': 'middle' }, label)];
}

function level(at: number, label: string | undefined, right: number, isFine: boolean): SVGElement[] {
  const rule = makeSvg('path', { class: isFine ? 'grid fine-grid' : 'grid', d: `M${left} ${at}H${right}` });
  if (label === undefined) return [rule];
  return [rule, makeSvg('text', { x: left - 6, y: at + 4, 'text-anchor': 'end' }, label)];
}

function frameOf(right: number): SVGElement {
  return makeSvg('path', { class: 'frame', d: `M${left} ${top}V${bottom}H${right}V${top}z` });
}

function axis(upper: string, lower: string, right: number): SVGElement {
  return makeSvg(
    'g',
    {},
    makeSvg('text', { class: 'axis', x: left, y: top - 9 }, upper),
    makeSvg('text', { class: 'axis', x: right, y: bottom + 34, 'text-anchor': 'end' }, lower),
  );
}
