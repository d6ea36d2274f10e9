/** Marks on a face that show what to touch and how: rings round controls, an arrow to turn, a badge that says it. */
import type { SequenceAction } from '../../schemas/index.ts';
import { phrase } from '../words/index.ts';
import type { FaceControl, FaceData } from './face.ts';
import { round } from './frame.ts';

export interface TouchRing {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly cornerMm: number;
}

export interface TouchMarks {
  /** Millimetres: the face with room for the badge above or below. */
  readonly viewBox: string;
  readonly rings: readonly TouchRing[];
  /** A second ring round what is kept down. */
  readonly outerRings: readonly TouchRing[];
  /** An arc round a knob that is turned, and its arrow head. */
  readonly turn: { readonly arc: string; readonly head: string } | undefined;
  readonly badge: {
    readonly text: string;
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    /** Lines from the badge to the rings. */
    readonly leaders: readonly string[];
  };
}

const ringGapMm = 3;
const outerGapMm = 6.5;
const badgeHeightMm = 13;
const badgeGapMm = 5;
const turnGapMm = 5;
/** Type size of a badge in millimetres, and what a character of it takes on average. */
export const badgeTypeMm = 8.5;
const characterMm = 0.56 * badgeTypeMm;

/** Undefined where nothing on the face is touched. */
export function touchMarks(face: FaceData, action: SequenceAction): TouchMarks | undefined {
  const used = controlsOf(action).flatMap((id) => face.controls.find((one) => one.id === id) ?? []);
  if (used.length === 0) return undefined;
  const isTurn = action.kind === 'turn';
  const rings = used.map((control) => ringRound(control, isTurn ? turnGapMm + ringGapMm : ringGapMm));
  const text = badgeText(action);
  const meanY = mean(used.map(({ yMm }) => yMm));
  const above = meanY < face.heightMm / 2;
  const width = round(text.length * characterMm + 8);
  const wantedX = mean(used.map(({ xMm }) => xMm)) - width / 2;
  const x = round(Math.min(face.widthMm - width, Math.max(0, wantedX)));
  const y = above ? -badgeGapMm - badgeHeightMm : face.heightMm + badgeGapMm;
  // Rings of controls close to the edge reach beyond it.
  const side = Math.max(2, ...rings.flatMap((ring) => [2 - ring.x, ring.x + ring.width + 2 - face.widthMm]));
  const room = badgeGapMm + badgeHeightMm + 2;
  return {
    viewBox: `${-side} ${above ? -room : -2} ${face.widthMm + 2 * side} ${face.heightMm + room + 2}`,
    rings,
    outerRings: action.kind === 'hold' ? used.map((control) => ringRound(control, outerGapMm)) : [],
    turn: isTurn ? turnArrow(used[0], action.direction) : undefined,
    badge: {
      text,
      x,
      y,
      width,
      height: badgeHeightMm,
      leaders: rings.map((ring) => {
        const ringX = ring.x + ring.width / 2;
        const fromX = round(Math.min(x + width - 2, Math.max(x + 2, ringX)));
        const [fromY, toY] = above ? [y + badgeHeightMm, ring.y] : [y, ring.y + ring.height];
        return `M${fromX} ${round(fromY)}L${round(ringX)} ${round(toY)}`;
      }),
    },
  };
}

function controlsOf(action: SequenceAction): readonly string[] {
  if (action.kind === 'hold') return action.controls;
  return 'control' in action ? [action.control] : [];
}

function badgeText(action: SequenceAction): string {
  switch (action.kind) {
    case 'hold':
      return action.controls.length > 1 ? phrase('Hold together') : phrase('Hold');
    case 'turn':
      return action.direction === 'clockwise'
        ? phrase('Turn clockwise, {clicks}\u00a0×', { clicks: action.clicks })
        : phrase('Turn anticlockwise, {clicks}\u00a0×', { clicks: action.clicks });
    case 'press':
    case 'tap': {
      const verb = action.kind === 'tap' ? phrase('Tap') : phrase('Press');
      return action.times === 1 ? verb : `${verb} ${action.times}\u00a0×`;
    }
    default:
      return '';
  }
}

function ringRound({ id, kind, xMm, yMm, widthMm, heightMm }: FaceControl, gap: number): TouchRing {
  const width = widthMm + 2 * gap;
  const height = heightMm + 2 * gap;
  return {
    id,
    x: round(xMm - width / 2),
    y: round(yMm - height / 2),
    width,
    height,
    cornerMm: kind === 'knob' ? Math.min(width, height) / 2 : 4,
  };
}

/** Three quarters round the knob, over its top, with the head where the turn ends. */
function turnArrow(
  knob: FaceControl | undefined,
  direction: 'clockwise' | 'anticlockwise',
): TouchMarks['turn'] {
  if (!knob) return undefined;
  const radius = Math.max(knob.widthMm, knob.heightMm) / 2 + turnGapMm;
  const side = direction === 'clockwise' ? 1 : -1;
  const endAngle = Math.PI / 4;
  const endX = knob.xMm + side * radius * Math.cos(endAngle);
  const endY = knob.yMm + radius * Math.sin(endAngle);
  const startX = 2 * knob.xMm - endX;
  // At its end the arc runs down and towards the middle.
  const [alongX, alongY] = [-side * Math.sin(endAngle), Math.cos(endAngle)];
  const head = [
    [endX + 4 * alongX, endY + 4 * alongY],
    [endX - 4 * alongY, endY + 4 * alongX],
    [endX + 4 * alongY, endY - 4 * alongX],
  ].map(([x = 0, y = 0]) => `${round(x)} ${round(y)}`);
  return {
    arc: `M${round(startX)} ${round(endY)}A${radius} ${radius} 0 1 ${side > 0 ? 1 : 0} ${round(endX)} ${round(endY)}`,
    head: `M${head.join('L')}Z`,
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
