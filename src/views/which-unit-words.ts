/** What to say while a rider finds out which unit it is. */
import type { SightedUnit } from '../decide/which-unit.ts';
import { countPhrase, orList, phrase } from '../words/index.ts';

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
    return year === undefined ? '' : phrase('Say the model line too: the year alone decides nothing.');
  const ride = year === undefined ? model : phrase('{model} of {year}', { model, year });
  if (fitted.length === 0) {
    const spans = units.flatMap(({ fitment }) => fitment.filter((one) => one.model === model));
    const from = Math.min(...spans.map(({ fromYear }) => fromYear));
    const to = Math.max(...spans.map(({ toYear }) => toYear));
    return phrase('No unit is known for {ride}; known are {from} to {to}. Go by what you see.', {
      ride,
      from,
      to,
    });
  }
  const names = orList(fitted.map(({ name }) => name));
  return phrase('{ride} left the factory with {names}.', { ride, names });
}

/** How many units are left, and what comes next. */
export function leftWords(left: readonly SightedUnit[], isAsked: boolean): string {
  const [only] = left;
  if (!only) return phrase('No unit known here looks like that. Begin again, or compare the faces below.');
  if (left.length === 1)
    return phrase('It is {unit} if the face below is the one you see.', { unit: only.name });
  return isAsked
    ? phrase('One more question:')
    : countPhrase(
        left.length,
        '{count} unit is left. Compare its face below, or ask us.',
        '{count} units are left. Compare their faces below, or ask us.',
      );
}
