import type { Finding } from '../../base/index.ts';
import { byModel, type FittedYears, sameName, yearSpan } from '../fitment.ts';
import type { Rule } from '../rule.ts';

export const fitmentGap: Rule = {
  id: 'fitment-gap',
  title: 'From its first to its last year, every model line has a unit in each year.',
  explanation:
    'A rider finds the unit by model line and year. Where the families leave years out between two of their ranges, a rider of those years finds nothing, and most often a year was mistyped or a family is not entered yet. Where the model line was truly not built, or built without any of these units, suppress the finding with that reason.',
  severity: 'warning',
  examples: [
    {
      title: 'a last year that is too early',
      file: 'families/fellside.md',
      good: 'toYear: 2014',
      bad: 'toYear: 2012',
      foundIn: 'families/moorlight.md',
      foundAt: '2015, toYear: 2018',
    },
  ],
  check: ({ answers: { base }, readerFindings }) => {
    // A family that could not be read leaves years open that it may well fill.
    if (readerFindings.some(({ place }) => place.file.startsWith('families/'))) return [];
    // The years of a line that runs backwards are not known, and what they leave open is its echo.
    const unsure = new Set(
      [...base.families.values()].flatMap(({ data }) =>
        data.fitment.filter((line) => line.fromYear > line.toYear).map((line) => sameName(line.model)),
      ),
    );
    return byModel(base)
      .filter(([first]) => first && !unsure.has(sameName(first.model)))
      .flatMap(modelFindings);
  },
};

function modelFindings(years: readonly FittedYears[]): Finding[] {
  const findings: Finding[] = [];
  let [last] = years;
  for (const next of years) {
    if (last && next.fromYear > last.toYear + 1) findings.push(gap(last, next));
    if (!last || next.toYear > last.toYear) last = next;
  }
  return findings;
}

function gap(last: FittedYears, next: FittedYears): Finding {
  return {
    rule: 'fitment-gap',
    severity: 'warning',
    place: next.family.place([...next.path, 'fromYear']),
    message: `No family is fitted to “${next.model}”, ${yearSpan(last.toYear + 1, next.fromYear - 1)}: “${last.family.data.name}” ends with ${last.toYear}, and “${next.family.data.name}” begins with ${next.fromYear}.`,
    help: 'Correct one of the two years, or add the family that was fitted in between.',
    related: [
      {
        place: last.family.place([...last.path, 'toYear']),
        message: `“${last.family.data.name}” ends here.`,
      },
    ],
  };
}
