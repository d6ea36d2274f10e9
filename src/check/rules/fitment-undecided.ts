import type { Entry, Finding } from '../../base/index.ts';
import { byModel, type FittedYears, yearSpan } from '../fitment.ts';
import type { Rule } from '../rule.ts';

export const fitmentUndecided: Rule = {
  id: 'fitment-undecided',
  title: 'Two families fitted to one model line in the same year can be told apart by sight.',
  explanation:
    'Where years overlap, model line and year do not decide which unit a rider has; the features under identify must. A way to tell by sight is a feature that one of the two families names and the other does not: whoever sees it has the one, whoever does not has the other. Features count as the same when their words are, whatever capitals, punctuation and articles they are written with and whatever control they point to. Whether a feature is really on one unit only is for its writer to know; that the same words stand under both families shows that it is not.',
  severity: 'error',
  examples: [
    {
      title: 'two families with the same feature in the same years',
      file: 'families/fellside.md',
      good: 'feature: No knob at all.',
      bad: 'feature: One knob in the middle, under the screen',
      foundIn: 'families/moorlight.md',
      foundAt: '{ model: Ordwick, fromYear: 2015',
      also: [{ file: 'families/fellside.md', good: 'toYear: 2014', bad: 'toYear: 2015' }],
    },
  ],
  check: ({ answers: { base } }) => {
    const looks = new Map([...base.families.values()].map((family) => [family.id, lookOf(family)]));
    const named = new Set<string>();
    return byModel(base).flatMap((years) => modelFindings(years, looks, named));
  },
};

/** What a family is told by: its features, as a set of words each. */
function lookOf(family: Entry<'families'>): string {
  const features = family.data.identify.map(({ feature }) =>
    feature
      .normalize('NFKC')
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, ' ')
      .replace(/(?<=^| )(?:a|an|the) /g, '')
      .trim(),
  );
  return [...new Set(features)].sort().join('\n');
}

/** One finding for two families, however many model lines they share; only families that look the same are compared. */
function modelFindings(
  years: readonly FittedYears[],
  looks: ReadonlyMap<string, string>,
  named: Set<string>,
): Finding[] {
  const furthest = new Map<string, FittedYears>();
  return years.flatMap((next) => {
    const look = looks.get(next.family.id) ?? '';
    const before = furthest.get(look);
    if (!before || next.toYear > before.toYear) furthest.set(look, next);
    if (!before || before.family.id === next.family.id || before.toYear < next.fromYear) return [];
    const pair = [before.family.id, next.family.id].sort().join('\n');
    if (named.has(pair)) return [];
    named.add(pair);
    return [undecided(before, next)];
  });
}

function undecided(before: FittedYears, next: FittedYears): Finding {
  const span = yearSpan(next.fromYear, Math.min(before.toYear, next.toYear));
  return {
    rule: 'fitment-undecided',
    severity: 'error',
    place: next.family.place(next.path),
    message: `“${before.family.data.name}” and “${next.family.data.name}” are both fitted to “${next.model}”, ${span}, and are to be known by the same features.`,
    help: 'Correct the years, or add a feature under identify that only one of the two has.',
    related: [
      {
        place: before.family.place(before.path),
        message: `The years of “${before.family.data.name}” stand here.`,
      },
      { place: next.family.place(['identify', 0]), message: 'These features are those of both.' },
    ],
  };
}
