/** A unit's face plate as a line drawing, from its measured geometry. */

import { round } from './frame.ts';
import { spread } from './label-places.ts';

export interface FaceControl {
  readonly id: string;
  readonly label: string;
  readonly kind: 'key' | 'knob' | 'touch-area';
  /** Centre, millimetres from the left and top edges of the face. */
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Numbers of the telling features that point to it. */
  readonly numbers: readonly number[];
}

export interface FaceData {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly screen: {
    readonly xMm: number;
    readonly yMm: number;
    readonly widthMm: number;
    readonly heightMm: number;
    readonly display: 'dot-matrix' | 'seven-segment' | 'anti-aliased';
    readonly touch: boolean;
  };
  readonly controls: readonly FaceControl[];
}

export interface DrawnControl {
  readonly id: string;
  readonly kind: FaceControl['kind'];
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly cx: number;
  readonly cy: number;
  readonly label: string;
  /** Size of the label in millimetres; 0 where it does not fit on the control. */
  readonly labelMm: number;
}

export interface Callout {
  readonly number: number;
  readonly x: number;
  readonly y: number;
  /** The point of the control it leads to. */
  readonly toX: number;
  readonly toY: number;
}

export interface FaceDrawing {
  /** Millimetres: left, top, width, height. */
  readonly viewBox: string;
  readonly controls: readonly DrawnControl[];
  readonly callouts: readonly Callout[];
}

/** Radius of a callout's circle, millimetres. */
export const calloutRadiusMm = 6;
const calloutOffsetMm = calloutRadiusMm + 5;

/**
 * Lays a face out in millimetres, with room for the numbered callouts above and below where there are any.
 * `spanMm` is the width drawn: faces drawn with the same one are to one scale.
 */
export function faceDrawing(face: FaceData, spanMm: number = face.widthMm): FaceDrawing {
  const callouts = [...calloutsOf(face, 'top'), ...calloutsOf(face, 'bottom')];
  const above = callouts.some((one) => one.y < 0) ? calloutOffsetMm + calloutRadiusMm + 1 : 1;
  const below = callouts.some((one) => one.y > 0) ? calloutOffsetMm + calloutRadiusMm + 1 : 1;
  return {
    viewBox: `-1 ${-above} ${spanMm + 2} ${face.heightMm + above + below}`,
    controls: face.controls.map(drawControl),
    callouts,
  };
}

/** Where one control lies, for drawings that pick it out. */
export function drawControl(control: FaceControl): DrawnControl {
  const { id, kind, label, xMm, yMm, widthMm, heightMm } = control;
  // A capital of a sans serif is about 0.65 em wide on average.
  const fitting = Math.min(5, heightMm * 0.55, (widthMm * 0.86) / (0.65 * Math.max(1, label.length)));
  return {
    id,
    kind,
    x: round(xMm - widthMm / 2),
    y: round(yMm - heightMm / 2),
    width: widthMm,
    height: heightMm,
    cx: xMm,
    cy: yMm,
    label,
    labelMm: fitting < 2.6 ? 0 : round(fitting),
  };
}

/** Callouts of the controls nearer to one edge, set along it without touching. */
function calloutsOf(face: FaceData, edge: 'top' | 'bottom'): Callout[] {
  const pointed = face.controls
    .filter((control) => (control.yMm < face.heightMm / 2 ? 'top' : 'bottom') === edge)
    .flatMap((control) => control.numbers.map((number) => ({ number, control })));
  const xs = spread(
    pointed.map(({ control }) => control.xMm),
    2 * calloutRadiusMm + 2,
    calloutRadiusMm,
    face.widthMm - calloutRadiusMm,
  );
  return pointed.map(({ number, control }, index) => ({
    number,
    x: round(xs[index] ?? control.xMm),
    y: edge === 'top' ? -calloutOffsetMm : face.heightMm + calloutOffsetMm,
    toX: control.xMm,
    toY: round(control.yMm + ((edge === 'top' ? -1 : 1) * control.heightMm) / 2),
  }));
}
