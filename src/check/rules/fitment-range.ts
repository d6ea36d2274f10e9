import type { Entry, Finding } from '../../base/index.ts';
import { type FittedYears, sameName, yearSpan, yearsOfFamily } from '../fitment.ts';
import type { Rule } from '../rule.ts';

export const fitmentRange: Rule = {
  id: 'fitment-range',
  title: 'The years of a family’s fitment run forwards, and no year of a model line is named twice.',
  explanation:
    'Each line of fitment gives a model line with its first and last model year. A first year after the last, or two lines of one family that claim the same year of the same model line, come from a year mistyped or a line copied and not changed.',
  severity: 'error',
  examples: [
    {
      title: 'the first and last year swapped',
      file: 'families/moorlight.md',
      good: 'fromYear: 2015, toYear: 2018',
      bad: 'fromYear: 2018, toYear: 2015',
      foundAt: '2015',
    },
    {
      title: 'a year in two lines of one model line',
      file: 'families/moorlight.md',
      good: 'fromYear: 2019, toYear: 2022',
      bad: 'fromYear: 2018, toYear: 2022',
      foundAt: '2018',
    },
  ],
  check: ({ answers: { base } }) => [...base.families.values()].flatMap(familyFindings),
};

function familyFindings(family: Entry<'families'>): Finding[] {
  const findings = family.data.fitment.flatMap(({ model, fromYear, toYear }, index): Finding[] =>
    fromYear <= toYear
      ? []
      : [
          {
            rule: 'fitment-range',
            severity: 'error',
            place: family.place(['fitment', index, 'toYear']),
            message: `The last year of “${model}”, ${toYear}, is before its first, ${fromYear}.`,
            help: 'Swap the two, or correct the one that is wrong.',
            related: [
              { place: family.place(['fitment', index, 'fromYear']), message: 'The first year stands here.' },
            ],
          },
        ],
  );
  const lastOfModel = new Map<string, FittedYears>();
  for (const years of yearsOfFamily(family).sort((a, b) => a.fromYear - b.fromYear)) {
    const key = sameName(years.model);
    const before = lastOfModel.get(key);
    if (before && years.fromYear <= before.toYear) findings.push(namedTwice(family, years, before));
    if (!before || years.toYear > before.toYear) lastOfModel.set(key, years);
  }
  return findings;
}

function namedTwice(family: Entry<'families'>, years: FittedYears, before: FittedYears): Finding {
  const to = Math.min(years.toYear, before.toYear);
  return {
    rule: 'fitment-range',
    severity: 'error',
    place: family.place([...years.path, 'fromYear']),
    message: `“${years.model}”, ${yearSpan(years.fromYear, to)}, is named in another line of this family as well.`,
    help: 'Correct the years, or make one line of the two.',
    related: [{ place: family.place([...before.path, 'toYear']), message: 'The other line ends here.' }],
  };
}
