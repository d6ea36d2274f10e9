/** Keeps labels at the end of curves from lying on one another. */

/**
 * Moves positions apart, in their order, until neighbours are at least `gap` apart and all lie within
 * `top` to `bottom`. Positions that are free already stay where they are. Where there is not room for all,
 * they are spread evenly.
 */
export function spread(wanted: readonly number[], gap: number, top: number, bottom: number): number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => at(wanted, a) - at(wanted, b));
  const fits = gap * (wanted.length - 1) <= bottom - top;
  const step = fits ? gap : (bottom - top) / Math.max(1, wanted.length - 1);
  const placed = order.map((index) => at(wanted, index));
  placed.forEach((y, index) => {
    placed[index] = Math.max(y, index === 0 ? top : at(placed, index - 1) + step);
  });
  for (let index = placed.length - 1; index >= 0; index -= 1) {
    const most = index === placed.length - 1 ? bottom : at(placed, index + 1) - step;
    placed[index] = Math.min(at(placed, index), most);
  }
  const result = [...wanted];
  order.forEach((index, place) => {
    result[index] = at(placed, place);
  });
  return result;
}

function at(values: readonly number[], index: number): number {
  return values[index] ?? 0;
}
