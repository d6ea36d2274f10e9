/** Whether colours can be told from one another: relative luminance and contrast after WCAG 2.2. */

/** Contrast of a mark that is no text against what is beside it (WCAG 2.2, 1.4.11), and of text (1.4.3). */
export const leastContrast = { line: 3, text: 4.5 } as const;

/** Red, green and blue of `#rrggbb`, 0 to 255. */
function channelsOf(colour: string): number[] {
  return [1, 3, 5].map((from) => Number.parseInt(colour.slice(from, from + 2), 16));
}

function hexOf(channels: readonly number[]): string {
  return `#${channels.map((one) => Math.round(one).toString(16).padStart(2, '0')).join('')}`;
}

/** Relative luminance of `#rrggbb`, 0 for black to 1 for white (WCAG 2.2, “relative luminance”). */
export function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = channelsOf(colour).map((one) => {
    const share = one / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Contrast ratio of two colours, 1 to 21, whichever is the lighter (WCAG 2.2, “contrast ratio”). */
export function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

/**
 * The nearest colour of the same hue that has the contrast wanted on a paper: mixed with as little black, or white, as
 * does. Black or white itself where nothing else does.
 */
export function nearestWithContrast(colour: string, paper: string, wanted: number): string {
  const own = channelsOf(colour);
  // On lighter paper black has the greater contrast, on darker paper white: they are equal at √(1.05·0.05) − 0.05.
  const end = luminance(paper) > 0.179 ? 0 : 255;
  for (let step = 0; step < 255; step += 1) {
    const mixed = hexOf(own.map((one) => one + ((end - one) * step) / 255));
    if (contrast(mixed, paper) >= wanted) return mixed;
  }
  return hexOf([end, end, end]);
}
