/** The pictures shown where a page is linked from elsewhere: a bench card with what the page is about, in dots. */
import sharp from 'sharp';
import { type FaceData, faceDrawing } from '../plot/face.ts';
import { papers } from '../views/papers.ts';
import { phrase } from '../words/index.ts';
import { dotLetters } from './dot-letters.ts';

/** In dots: the size link previews are commonly cut to. */
export const previewSize = { width: 1200, height: 630 } as const;

export type PreviewSubject =
  | { readonly kind: 'site' }
  | { readonly kind: 'unit'; readonly name: string; readonly face: FaceData }
  | { readonly kind: 'profile'; readonly system: 'amplified' | 'unamplified' };

const ink = '#14171a';
/** The card: what is left of the picture beside the stub. */
const card = { left: 190, right: 1150, top: 60 } as const;
const picture = { left: card.left, right: card.right, top: 210, bottom: 520 } as const;

function systemTitle(system: 'amplified' | 'unamplified'): string {
  return system === 'amplified' ? phrase('Factory amplifier') : phrase('Speakers straight on');
}

/** The picture as SVG, without any text that would need a font. */
export function previewSvg(accent: string, shop: string, subject: PreviewSubject): string {
  const { width, height } = previewSize;
  const title =
    subject.kind === 'unit' ? subject.name : subject.kind === 'profile' ? systemTitle(subject.system) : shop;
  const words = dotLetters(title, card.left, card.top, card.right - card.left, 11);
  const foot = subject.kind === 'site' ? '' : dotLetters(shop, card.left, 560, 700, 4).path;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}">`,
    `<rect width="${width}" height="${height}" fill="${papers.light}"/>`,
    `<path d="M0 0h130v${height}H0z" fill="${accent}"/>`,
    `<path d="${words.path}${foot}" fill="${ink}"/>`,
    `<g fill="none" stroke="${ink}" stroke-width="4" stroke-linejoin="round">${drawingOf(subject)}</g>`,
    '</svg>',
  ].join('');
}

/** The picture as PNG. */
export async function previewPng(accent: string, shop: string, subject: PreviewSubject): Promise<Uint8Array> {
  return sharp(Buffer.from(previewSvg(accent, shop, subject)))
    .png({ palette: true })
    .toBuffer();
}

function drawingOf(subject: PreviewSubject): string {
  switch (subject.kind) {
    case 'unit':
      return faceSvg(subject.face);
    case 'profile':
      return chainSvg(subject.system === 'amplified');
    case 'site':
      // What the shop does: the level by volume step, up to where it clips.
      return `<path d="M190 210v310h960"/><path d="M210 500L700 270Q760 240 840 236L1130 232" stroke-width="10"/><path d="M720 210v310" stroke-dasharray="12 12"/>`;
  }
}

/** The face plate as large as it fits. */
function faceSvg(face: FaceData): string {
  const room = { width: picture.right - picture.left, height: picture.bottom - picture.top };
  const scale = Math.min(room.width / face.widthMm, room.height / face.heightMm);
  const { screen } = face;
  const controls = faceDrawing(face).controls.map(({ kind, x, y, width, height, cx, cy }) =>
    kind === 'knob'
      ? `<ellipse cx="${cx}" cy="${cy}" rx="${width / 2}" ry="${height / 2}"/>`
      : `<rect x="${x}" y="${y}" width="${width}" height="${height}" rx="1.5"${kind === 'touch-area' ? ' stroke-dasharray="2 2"' : ''}/>`,
  );
  const shapes = [
    `<rect width="${face.widthMm}" height="${face.heightMm}" rx="4"/>`,
    `<rect x="${screen.xMm}" y="${screen.yMm}" width="${screen.widthMm}" height="${screen.heightMm}" rx="1.5" fill="#e8e4d8"/>`,
    ...controls,
  ];
  const placed = `translate(${picture.left} ${picture.top}) scale(${Math.round(scale * 1000) / 1000})`;
  return `<g transform="${placed}" stroke-width="${Math.round((4 / scale) * 100) / 100}">${shapes.join('')}</g>`;
}

/** Unit, amplifier where there is one, two speakers, joined by wires. */
function chainSvg(isAmplified: boolean): string {
  const speaker = (x: number, y: number): string =>
    `<circle cx="${x}" cy="${y}" r="64"/><circle cx="${x}" cy="${y}" r="24"/>`;
  const wires = (from: number): string =>
    `<path d="M${from} 330H${from + 60}V290H1016M${from} 400H${from + 60}V440H1016"/>`;
  const unit =
    '<rect x="190" y="270" width="280" height="190" rx="10"/><rect x="220" y="300" width="160" height="90" fill="#e8e4d8"/><circle cx="425" cy="345" r="24"/><path d="M220 425h220"/>';
  const amplifier =
    '<path d="M470 365h110"/><rect x="580" y="270" width="240" height="190"/><path d="M610 270v190M640 270v190M670 270v190M730 270v190M760 270v190M790 270v190"/>';
  return `${unit}${isAmplified ? amplifier : ''}${wires(isAmplified ? 820 : 470)}${speaker(1080, 284)}${speaker(1080, 446)}`;
}
