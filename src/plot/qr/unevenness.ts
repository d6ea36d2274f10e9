/**
 * How unlike an even grey a masked symbol is: the mask with the fewest points is taken. Readers take any mask. The points
 * are those of ISO/IEC 18004, 7.8.3, but for the first kind, which counts modules whose neighbours are nearly all alike in
 * place of runs, as the encoder `qrcode-generator` does.
 */
export function unevenness(modules: Uint8Array, size: number): number {
  const at = (row: number, column: number): number => modules[row * size + column] ?? 0;
  let points = 0;
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1) {
      const alike = alikeAround(modules, size, row, column);
      if (alike > 5) points += alike - 2;
    }
  }
  for (let row = 0; row + 1 < size; row += 1) {
    for (let column = 0; column + 1 < size; column += 1) {
      const dark = at(row, column) + at(row, column + 1) + at(row + 1, column) + at(row + 1, column + 1);
      if (dark === 0 || dark === 4) points += 3;
    }
  }
  // What looks like a finder pattern: dark and light as 1:1:3:1:1, along each row and each column.
  for (let line = 0; line < size; line += 1) {
    let [across, down] = [0, 0];
    for (let place = 0; place < size; place += 1) {
      across = ((across << 1) | at(line, place)) & 0x7f;
      down = ((down << 1) | at(place, line)) & 0x7f;
      if (place < 6) continue;
      if (across === 0b1011101) points += 40;
      if (down === 0b1011101) points += 40;
    }
  }
  const dark = modules.reduce((sum, one) => sum + one, 0);
  return points + (Math.abs((100 * dark) / size / size - 50) / 5) * 10;
}

/** How many of the up to eight modules around one are as it is. */
function alikeAround(modules: Uint8Array, size: number, row: number, column: number): number {
  const own = modules[row * size + column];
  let alike = -1;
  const [top, bottom] = [row > 0 ? row - 1 : row, row + 1 < size ? row + 1 : row];
  const [left, right] = [column > 0 ? column - 1 : column, column + 1 < size ? column + 1 : column];
  for (let y = top; y <= bottom; y += 1) {
    for (let at = y * size + left, end = y * size + right; at <= end; at += 1)
      if (modules[at] === own) alike += 1;
  }
  return alike;
}
