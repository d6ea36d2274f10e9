/** What to say while a rider finds out which unit it is. */
import type { SightedUnit } from '../decide/which-unit.ts';

interface Ride {
  readonly model: string | undefined;
  readonly year: number | undefined;
}

/** What model line and year alone say; empty where neither is known. */
export function fittedWords(
  { model, year }: Ride,
  fitted: readonly SightedUnit[],
  units: readonly SightedUnit[],
): string {
  if (model === undefined)
    return year === undefined ? '' : 'Say the model line too: the year alone decides nothing.';
  const ride = year === undefined ? model : `${model} of ${year}`;
  if (fitted.length === 0) {
    const spans = units.flatMap(({ fitment }) => fitment.filter((one) => one.model === model));
    const from = Math.min(...spans.map(({ fromYear }) => fromYear));
    const to = Math.max(...spans.map(({ toYear }) => toYear));
    return `No unit is known for ${ride}; known are ${from} to ${to}. Go by what you see.`;
  }
  const names = listed(fitted.map(({ name }) => name));
  return `${ride} left the factory with ${names}.`;
}

/** How many units are left, and what comes next. */
export function leftWords(left: readonly SightedUnit[], isAsked: boolean): string {
  const [only] = left;
  if (!only) return 'No unit known here looks like that. Begin again, or compare the faces below.';
  if (left.length === 1) return `It is ${only.name} if the face below is the one you see.`;
  return isAsked
    ? 'One more question:'
    : `${left.length} units are left. Compare their faces below, or ask us.`;
}

/** `A`, `A or B`, `A, B or C`. */
function listed(names: readonly string[]): string {
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}
