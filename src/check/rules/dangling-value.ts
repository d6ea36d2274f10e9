import type { Answers } from '../../answers.ts';
import {
  type DirectiveNode,
  directivesOf,
  type Entry,
  type Finding,
  placeInDirective,
  placeOfNode,
} from '../../base/index.ts';
import { resolveDirective } from '../../prose/index.ts';
import type { Rule } from '../rule.ts';

export const danglingValue: Rule = {
  id: 'dangling-value',
  title: 'Every directive in prose stands for something.',
  explanation:
    'Prose pulls what the program knows in by directives: :value[family/profile clean-volts] for a computed value with its uncertainty (with step, load, supply or signal in curly brackets where it is not the headline value, and form=value to leave the uncertainty out), :code[family/profile] for a code, :cited[2.83 V]{source=name} for a number from a source, :limit[clean-distortion] for a limit the program computes with. One that is misspelt, or asks for a value the readings do not give, would leave a hole in the page. That the profile or the source exists is checked by dangling-link.',
  severity: 'error',
  examples: [
    {
      title: 'the name of a value misspelt',
      file: 'guides/reading-a-code.md',
      good: 'not a line of the list.',
      bad: 'which may put out :value[moorlight/km-4417 clean-vollts].',
      foundAt: 'clean-vollts',
    },
    {
      title: 'a value at a step that nobody measured',
      file: 'guides/reading-a-code.md',
      good: 'not a line of the list.',
      bad: 'which may boost by :value[moorlight/km-4417 bass-boost]{step=29}.',
      foundAt: 'step=29',
    },
    {
      title: 'a directive misspelt',
      file: 'guides/reading-a-code.md',
      good: 'not a line of the list.',
      bad: 'such as :cod[moorlight/km-4417].',
      foundAt: ':cod[',
    },
    {
      title: 'a number cited without a source',
      file: 'families/fellside.md',
      good: 'No knob.\n',
      bad: 'No knob, and speakers of :cited[4 Ω].\n',
      foundAt: ':cited[4 Ω]',
    },
  ],
  check: ({ answers }) =>
    [...answers.base.families.values(), ...answers.base.guides.values()].flatMap((entry) =>
      findingsIn(answers, entry),
    ),
};

function findingsIn(answers: Answers, { body, source }: Entry): Finding[] {
  if (!body || !source) return [];
  return directivesOf(body).flatMap((node: DirectiveNode) => {
    const resolved = resolveDirective(answers, node);
    if (resolved.to !== 'nothing' || !resolved.problem) return [];
    const { message, help, at } = resolved.problem;
    return {
      rule: 'dangling-value',
      severity: 'error',
      place: at ? placeInDirective(source, node, at) : placeOfNode(source, node),
      message,
      help,
      related: [],
    };
  });
}
