/** Dates as numbers, so that they are ordered like any other. */

const dayMilliseconds = 86_400_000;

/** Days since 1970-01-01 of an ISO 8601 calendar date; undefined where it is none. */
export function daysOf(date: string): number | undefined {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date);
  if (!parts) return undefined;
  const time = Date.parse(`${date}T00:00:00Z`);
  return Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== date
    ? undefined
    : time / dayMilliseconds;
}

/** The ISO 8601 calendar date of a number of days since 1970-01-01. */
export function dateOf(days: number): string {
  return new Date(days * dayMilliseconds).toISOString().slice(0, 10);
}
