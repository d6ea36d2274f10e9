import type { Finding } from '../../base/index.ts';
import { contrast, leastContrast, nearestWithContrast } from '../contrast.ts';
import { papers } from '../papers.ts';
import type { Rule } from '../rule.ts';

/** On which paper each colour of the shop is printed. */
const grounds = [
  { field: 'accent', paper: papers.light, ground: 'light' },
  { field: 'accentDark', paper: papers.dark, ground: 'dark' },
] as const;

export const faintColour: Rule = {
  id: 'faint-colour',
  title: 'The shop’s colours can be told from the paper they stand on.',
  explanation: `The pages print the shop’s colours as lines: under links, under the code field, beside what matters, in plots; all text is near-black on light paper and near-white on dark. Lines that tell something need a contrast of ${leastContrast.line}:1 against what is beside them (WCAG 2.2, 1.4.11), accent against the light paper and accentDark against the dark one. Where a colour is too faint, take a darker one for light ground or a lighter one for dark ground; the finding names the nearest of the same hue that will do.`,
  severity: 'error',
  examples: [
    {
      title: 'a bright yellow on light paper',
      file: 'site.yaml',
      good: 'accent: "#5a3a8a"',
      bad: 'accent: "#ffd400"',
      foundAt: '"#ffd400"',
    },
    {
      title: 'the colour for light ground on dark ground too',
      file: 'site.yaml',
      good: 'accentDark: "#c8b0f0"',
      bad: 'accentDark: "#5a3a8a"',
      foundAt: '"#5a3a8a"',
    },
  ],
  check: ({ answers: { base } }) => {
    const { site } = base;
    if (!site) return [];
    return grounds.flatMap(({ field, paper, ground }): Finding[] => {
      const colour = site.data.colours[field];
      const found = contrast(colour, paper);
      if (found >= leastContrast.line) return [];
      const better = nearestWithContrast(colour, paper, leastContrast.line);
      return [
        {
          rule: 'faint-colour',
          severity: 'error',
          place: site.place(['colours', field]),
          message: `${colour} is too faint on the ${ground} paper, ${paper}: its contrast is ${ratio(found)}, and lines need ${leastContrast.line}:1.`,
          help: `Take ${better}, the nearest of the same hue that is strong enough, or a ${ground === 'light' ? 'darker' : 'lighter'} colour of your own.`,
          related: [],
        },
      ];
    });
  },
};

/** Rounded down: what misses the limit is never shown as reaching it. */
function ratio(value: number): string {
  return `${(Math.floor(value * 100) / 100).toFixed(2)}:1`;
}
