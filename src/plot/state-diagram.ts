/** A state machine as a drawing: boxes in layers from the start down, steps as arrows, recoveries dashed. */

import { phrase } from '../words/index.ts';
import { round } from './frame.ts';
import { layersOf } from './layers.ts';
import { wrapWords } from './wrap-words.ts';

export interface DiagramInput {
  readonly start: string;
  readonly states: readonly { readonly id: string; readonly title: string; readonly kind: StateKind }[];
  readonly steps: readonly { readonly from: string; readonly to: string; readonly label: string }[];
  readonly recoveries: readonly { readonly from: string; readonly to: string }[];
}
export type StateKind = 'nothing' | 'profile-list' | 'active-code';

export interface DiagramBox {
  readonly id: string;
  readonly kind: StateKind;
  readonly x: number;
  readonly y: number;
  readonly titleLines: readonly string[];
  /** What is to be heeded in this state; empty where nothing is. */
  readonly note: string;
}

export interface DiagramArrow {
  readonly path: string;
  readonly head: string;
  readonly dashed: boolean;
  readonly label: {
    readonly lines: readonly string[];
    readonly x: number;
    readonly y: number;
    readonly anchor: 'start' | 'end';
  };
}

export interface StateDiagram {
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly DiagramBox[];
  readonly arrows: readonly DiagramArrow[];
}

/** Sizes in drawing units, which on a phone are about CSS pixels. */
export const diagramSizes = { boxWidth: 186, boxHeight: 58, lineHeight: 17 } as const;
const { boxWidth, boxHeight, lineHeight } = diagramSizes;
const columnGap = 32;
const laneGap = 16;
const portInset = 26;
const labelCharacters = 22;
const sideLabelCharacters = 14;
const sideLabelWidth = 104;
const edge = 6;

function noteOf(kind: StateKind): string {
  const words: Readonly<Record<StateKind, string>> = {
    nothing: '',
    'profile-list': phrase('List: not your answer'),
    'active-code': phrase('The active code'),
  };
  return words[kind];
}

interface Placed {
  readonly layer: number;
  readonly column: number;
  readonly x: number;
  readonly y: number;
}
interface Arrow {
  readonly from: Placed;
  readonly to: Placed;
  readonly lines: readonly string[];
}

/** The same input always gives the same drawing. */
export function stateDiagram({ start, states, steps, recoveries }: DiagramInput): StateDiagram {
  const known = new Set(states.map(({ id }) => id));
  const drawn = steps.filter(({ from, to }) => known.has(from) && known.has(to));
  const layers = layersOf(
    start,
    states.map(({ id }) => id),
    drawn,
  );
  const layerOf = new Map(layers.flatMap((ids, layer) => ids.map((id) => [id, layer] as const)));
  const isDirect = (step: { from: string; to: string }): boolean =>
    (layerOf.get(step.to) ?? 0) - (layerOf.get(step.from) ?? 0) === 1;

  const merged = mergeSteps(drawn);
  const sideways = merged.filter((step) => !isDirect(step));
  const left = edge + (sideways.length > 0 ? sideLabelWidth + laneGap * sideways.length : 0);
  const columns = Math.max(1, ...layers.map((ids) => ids.length));
  const right = left + columns * boxWidth + (columns - 1) * columnGap;

  const places = new Map<string, Placed>();
  let y = edge;
  layers.forEach((ids, layer) => {
    ids.forEach((id, column) => {
      places.set(id, { layer, column, x: left + column * (boxWidth + columnGap), y });
    });
    const below = merged.filter((step) => isDirect(step) && layerOf.get(step.from) === layer);
    const most = Math.max(1, ...below.map(({ labels }) => linesOf(labels, labelCharacters).length));
    y += boxHeight + 28 + most * lineHeight;
    if (layer === layers.length - 1) y -= 28 + most * lineHeight;
  });

  const placed = (id: string): Placed => places.get(id) ?? { layer: 0, column: 0, x: left, y: edge };
  const arrow = (step: MergedStep, characters: number): Arrow => ({
    from: placed(step.from),
    to: placed(step.to),
    lines: linesOf(step.labels, characters),
  });
  const targets = [...new Set(recoveries.filter(({ from, to }) => from !== to).map(({ to }) => to))];
  const back = mergeSteps(recoveries.map((one) => ({ ...one, label: '' })));
  const arrows = [
    ...back.map(({ from, to }) => recoveryArrow(placed(from), placed(to), right, targets.indexOf(to))),
    ...merged.filter(isDirect).map((step) => directArrow(arrow(step, labelCharacters))),
    ...sideways.map((step, lane) => sideArrow(arrow(step, sideLabelCharacters), left - laneGap * (lane + 1))),
  ];
  return {
    width: right + (back.length > 0 ? 22 + laneGap * targets.length : edge),
    height: y + edge,
    boxes: states.map(({ id, title, kind }) => {
      const { x, y: top } = placed(id);
      return { id, kind, x, y: top, titleLines: wrapWords(title, 20).slice(0, 2), note: noteOf(kind) };
    }),
    arrows,
  };
}

interface MergedStep {
  readonly from: string;
  readonly to: string;
  readonly labels: readonly string[];
}

/** Steps between the same two states share one arrow. */
function mergeSteps(steps: DiagramInput['steps']): MergedStep[] {
  const merged = new Map<string, MergedStep>();
  for (const { from, to, label } of steps) {
    const key = `${from} ${to}`;
    const labels = [...(merged.get(key)?.labels ?? []), label];
    merged.set(key, { from, to, labels });
  }
  return [...merged.values()];
}

function linesOf(labels: readonly string[], characters: number): string[] {
  return labels.flatMap((label, index) =>
    wrapWords(index === 0 ? label : phrase('or: {label}', { label }), characters),
  );
}

/** From the foot of a box to the head of one in the next layer; its label stands beside the last part. */
function directArrow({ from, to, lines }: Arrow): DiagramArrow {
  const x = from.x + portInset;
  const toX = to.x + portInset;
  const top = from.y + boxHeight;
  const bend = x === toX ? '' : `V${top + 9}H${toX}`;
  return {
    path: `M${x} ${top}${bend}V${to.y - 6}`,
    head: `M${toX} ${to.y}l-6 -9h12z`,
    dashed: false,
    label: { lines, x: toX + 12, y: top + 9 + lineHeight, anchor: 'start' },
  };
}

/** Past other layers, or back: along a lane at the left, its label outside the lane. */
function sideArrow({ from, to, lines }: Arrow, laneX: number): DiagramArrow {
  const fromY = from.y + boxHeight - 16;
  const toY = to.y + 18;
  const out =
    from.column === 0 ? `M${from.x} ${fromY}H${laneX}` : `M${from.x + 12} ${from.y + boxHeight}v5H${laneX}`;
  const into = to.column === 0 ? `V${toY}H${to.x - 6}` : `V${to.y - 14}H${to.x + 12}V${to.y - 6}`;
  const head = to.column === 0 ? `M${to.x} ${toY}l-9 -6v12z` : `M${to.x + 12} ${to.y}l-6 -9h12z`;
  const labelY = fromY < toY ? fromY + lineHeight : fromY - lineHeight * lines.length;
  return {
    path: `${out}${into}`,
    head,
    dashed: false,
    label: { lines, x: laneX - 8, y: round(labelY), anchor: 'end' },
  };
}

/** Along a lane at the right that all recoveries to one state share; to the state itself, a small loop. */
function recoveryArrow(from: Placed, to: Placed, right: number, lane: number): DiagramArrow {
  const none = { lines: [], x: 0, y: 0, anchor: 'start' } as const;
  const fromX = from.x + boxWidth;
  if (from === to) {
    const y = from.y + 22;
    return {
      path: `M${fromX} ${y + 14}h12v-14h-6`,
      head: `M${fromX} ${y}l8 -5v10z`,
      dashed: true,
      label: none,
    };
  }
  const laneX = right + 22 + laneGap * lane;
  const toX = to.x + boxWidth;
  const toY = to.y + 10;
  const out =
    fromX === right
      ? `M${fromX} ${from.y + boxHeight - 10}H${laneX}`
      : `M${fromX - 12} ${from.y + boxHeight}v5H${laneX}`;
  const into = toX === right ? `V${toY}H${toX + 6}` : `V${to.y - 14}H${toX - 12}V${to.y - 6}`;
  const head = toX === right ? `M${toX} ${toY}l8 -5v10z` : `M${toX - 12} ${to.y}l-5 -8h10z`;
  return { path: `${out}${into}`, head, dashed: true, label: none };
}
