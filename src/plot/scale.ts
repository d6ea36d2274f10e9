/** From values to places on an axis. */

export type Scale = (value: number) => number;

type Ends = readonly [from: number, to: number];

/** Equal differences are equally far apart. Values beyond the ends lie beyond them. */
export function linearScale([from, to]: Ends, [start, end]: Ends): Scale {
  return (value) => start + ((value - from) / (to - from)) * (end - start);
}

/** Equal ratios are equally far apart. All values above 0. */
export function logScale([from, to]: Ends, places: Ends): Scale {
  const along = linearScale([Math.log(from), Math.log(to)], places);
  return (value) => along(Math.log(value));
}

/** What lies beyond the ends is put at the end. */
export function clamped(scale: Scale, [start, end]: Ends): Scale {
  const [least, most] = start < end ? [start, end] : [end, start];
  return (value) => Math.min(most, Math.max(least, scale(value)));
}
