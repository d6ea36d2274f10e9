/** The site's mark, a bench card with its stub in the shop's colour, as it stands in tabs and on home screens. */
import sharp from 'sharp';

export const manifestPath = 'manifest.webmanifest';
export const touchIconPath = 'icons/touch-180.png';

/** The icons drawn in dots, by the name of their file. */
export const dotIcons = {
  'icon-192': { size: 192, purpose: 'any' },
  'icon-512': { size: 512, purpose: 'any' },
  'maskable-192': { size: 192, purpose: 'maskable' },
  'maskable-512': { size: 512, purpose: 'maskable' },
  // What iOS puts on the home screen: it rounds the corners itself.
  'touch-180': { size: 180, purpose: 'maskable' },
} as const;

/** A launcher may cut a maskable icon down to a circle of this share of its width (W3C, Web App Manifest). */
const safeShare = 0.8;

/** The mark as SVG. With `isMaskable` it keeps within the circle that no launcher cuts away. */
export function markSvg(accent: string, isMaskable = false): string {
  // The card is 28 by 24 of 32 units; its corners touch a circle of this share of the width.
  const cornerShare = Math.hypot(30, 24) / 32;
  const scale = isMaskable ? Math.floor((100 * safeShare) / cornerShare) / 100 : 1;
  const shift = 16 * (1 - scale);
  const card = `<path d="M2 5h11v22H2z" fill="${accent}"/><path d="M16 5h14v22H16m3-15h8m-8 4h8m-8 4h5" fill="none" stroke="#14171a" stroke-width="2"/>`;
  const placed = isMaskable
    ? `<g transform="translate(${shift} ${shift}) scale(${scale})">${card}</g>`
    : card;
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><rect width="32" height="32" fill="#fff"/>${placed}</svg>`;
}

/** The mark as PNG, `size` dots wide. */
export async function markPng(accent: string, size: number, isMaskable: boolean): Promise<Uint8Array> {
  const svg = Buffer.from(markSvg(accent, isMaskable));
  // Drawn at its size rather than enlarged: 72 dots an inch are one dot a unit.
  return sharp(svg, { density: (72 * size) / 32 })
    .resize(size, size)
    .png({ palette: true })
    .toBuffer();
}
