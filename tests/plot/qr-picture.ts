/** QR codes as pictures: from dots to modules. */
import sharp from 'sharp';
import type { Modules } from './qr-decoder.ts';

/**
 * The modules of a picture that shows a symbol with a quiet zone of 4 modules and nothing else; `modules` counts both.
 * @throws Error where the quiet zone is not light, or a dot at the middle of a module is neither dark nor light.
 */
export async function modulesOf(picture: Uint8Array | string, modules: number): Promise<Modules> {
  const source = typeof picture === 'string' ? Buffer.from(picture) : Buffer.from(picture);
  const { data, info } = await sharp(source)
    .flatten({ background: '#fff' })
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  const isDark = (row: number, column: number): boolean => {
    const x = Math.floor(((column + 0.5) * info.width) / modules);
    const y = Math.floor(((row + 0.5) * info.height) / modules);
    const grey = data[(y * info.width + x) * info.channels] ?? 128;
    if (grey > 50 && grey < 205) throw new Error(`grey ${grey} at ${row}, ${column}`);
    return grey <= 50;
  };
  const all = Array.from({ length: modules }, (_, row) =>
    Array.from({ length: modules }, (_, column) => isDark(row, column)),
  );
  all.forEach((row, y) => {
    row.forEach((one, x) => {
      const isQuiet = Math.min(x, y, modules - 1 - x, modules - 1 - y) < 4;
      if (isQuiet && one) throw new Error(`dark in the quiet zone at ${y}, ${x}`);
    });
  });
  return all.slice(4, -4).map((row) => row.slice(4, -4));
}

/** A drawing as SVG, `dots` a module. */
export function svgOf({ size, path }: { size: number; path: string }, dots = 8): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${size * dots}" height="${size * dots}" viewBox="0 0 ${size} ${size}" shape-rendering="crispEdges"><rect width="${size}" height="${size}" fill="#fff"/><path d="${path}" stroke="#000" fill="none"/></svg>`;
}
