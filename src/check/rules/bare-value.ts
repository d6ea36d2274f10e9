import type { Nodes } from 'mdast';
import type { Answers } from '../../answers.ts';
import {
  attributeOf,
  directivesOf,
  type Entry,
  type Finding,
  isKind,
  knownName,
  type Place,
  placeOfNode,
  plainText,
  type TextFile,
} from '../../base/index.ts';
import {
  alignedOffsets,
  electricalNumbers,
  type Flow,
  flowsOf,
  isElectricalUnit,
} from '../../prose/index.ts';
import { plainTexts } from '../plain-texts.ts';
import type { Rule } from '../rule.ts';

export const bareValue: Rule = {
  id: 'bare-value',
  title: 'No number with an electrical unit stands bare in prose.',
  explanation:
    'A number typed into a text has no source, no uncertainty, and stays as it is when the readings change. In the body of a guide or a family, :value[family/profile clean-volts] pulls in a computed value, :limit[clean-distortion] a limit the program computes with, and :cited[2.83 V]{source=name} gives a number from elsewhere with the source it was taken from; what our own bench found is never cited by hand. Written-out numbers (one per cent) and table columns headed by a unit count; code spans do not. Texts without directives (summaries, what is told of a profile, what to do in a sequence, what a rule of a decision table says) are to do without such numbers: a profile’s page shows them beside the text. Left alone are the words of others and what is on record: quotes, titles and notes of sources, names, bench methods, reasons for setting readings aside, and what a sequence says a screen shows, which is to be copied letter for letter.',
  severity: 'error',
  examples: [
    {
      title: 'a measured value typed into a guide',
      file: 'guides/reading-a-code.md',
      good: 'not a line of the list.',
      bad: 'which may put out 6.3 V.',
      foundAt: '6.3 V',
    },
    {
      title: 'a range, in words',
      file: 'families/fellside.md',
      good: 'No knob.\n',
      bad: 'No knob, and two to four ohms of load.\n',
      foundAt: 'two to four ohms',
    },
    {
      title: 'a number in what is told of a profile',
      file: 'profiles/fellside/310.yaml',
      good: 'about: The only profile it was made with.',
      bad: 'about: The only profile, 3 dB louder than others.',
      foundAt: '3 dB',
    },
    {
      title: 'a threshold repeated in what a rule says',
      file: 'tables/behind-an-amplifier.yaml',
      good: 'can work with so little.',
      bad: 'can work with less than 1 V.',
      foundAt: '1 V',
    },
    {
      title: 'a bench result cited by hand',
      file: 'guides/reading-a-code.md',
      good: 'not a line of the list.',
      bad: 'which may put out :cited[6.3 V]{source=shed-session}.',
      foundAt: ':cited[6.3 V]{source=shed-session}',
    },
  ],
  check: ({ answers }) => [
    ...[...answers.base.families.values(), ...answers.base.guides.values()].flatMap((entry) => [
      ...bareInBody(entry),
      ...benchCitedByHand(answers, entry),
    ]),
    ...plainTexts(answers.base).flatMap(({ entry, path, text }) => bareInField(entry, path, text)),
  ],
};

const inBody =
  'If the readings give it, write :value[family/profile clean-volts] for it; if it comes from a source, :cited[…]{source=name}; else say it without the number.';

function bareInBody({ body, source }: Entry): Finding[] {
  if (!body || !source) return [];
  return flowsOf(body, source).flatMap((flow) => [
    ...electricalNumbers(flow.text).map(({ start, end, text }) =>
      bare(placeInFlow(source, flow, start, end), text, inBody),
    ),
    ...bareCell(source, flow),
  ]);
}

/** A number without a unit, in a column whose heading has the unit. */
function bareCell(source: TextFile, flow: Flow): Finding[] {
  if (flow.columnHeading === undefined || !isElectricalUnit(flow.columnHeading)) return [];
  if (electricalNumbers(flow.text).length > 0) return [];
  const number = /[-−+±]?\s?\d[\d.,]*(?:\s?[-–±]\s?\d[\d.,]*)?/u.exec(flow.text);
  if (!number) return [];
  const place = placeInFlow(source, flow, number.index, number.index + number[0].length);
  return [bare(place, `${number[0]}, ${flow.columnHeading}`, inBody)];
}

function placeInFlow(source: TextFile, flow: Flow, start: number, end: number): Place {
  const from = flow.offsets[start] ?? 0;
  const last = flow.offsets[end - 1] ?? from;
  return source.place(from, Math.max(last + 1, from + 1));
}

function bareInField(entry: Entry, path: readonly (string | number)[], text: string): Finding[] {
  const numbers = electricalNumbers(text);
  if (numbers.length === 0) return [];
  const whole = entry.place(path);
  const raw = entry.sourceOf(path) ?? text;
  const offsets = alignedOffsets(text, raw, 0);
  return numbers.map(({ start, end, text: number }) => {
    const from = after(whole, raw.slice(0, offsets[start] ?? 0));
    const to = after(whole, raw.slice(0, (offsets[end - 1] ?? 0) + 1));
    return bare(
      { ...from, endLine: to.line, endColumn: to.column },
      number,
      isKind(entry, 'tables')
        ? 'Say it without the number: the tests of the rules stand beside it.'
        : isKind(entry, 'profiles')
          ? 'Say it without the number: the page shows the computed values beside it. What another source says belongs in statements/.'
          : 'Say it without the number; in the body of a guide or a family it can stand with its source.',
    );
  });
}

/** The place of the character behind some text that begins at a place. */
function after(begin: Place, text: string): Place {
  const lines = text.split('\n');
  const column = (lines.length === 1 ? begin.column : 1) + (lines.at(-1)?.length ?? 0);
  return { ...begin, line: begin.line + lines.length - 1, column };
}

function bare(place: Place, number: string, help: string): Finding {
  return {
    rule: 'bare-value',
    severity: 'error',
    place,
    message: `“${number.replace(/\s+/g, ' ')}” stands here without its source, and stays as it is when the readings change.`,
    help,
    related: [],
  };
}

/** Numbers that cite a bench session: what the bench found is computed, and a copy of it goes stale. */
function benchCitedByHand({ base }: Answers, { body, source }: Entry): Finding[] {
  if (!body || !source) return [];
  return directivesOf(body).flatMap((node): Finding[] => {
    const id = knownName(node) === 'cited' ? attributeOf(node, 'source') : undefined;
    if (id === undefined || base.sources.get(id)?.data.kind !== 'bench-session') return [];
    const words = plainText(node as Nodes);
    if (electricalNumbers(words).length === 0) return [];
    return [
      {
        rule: 'bare-value',
        severity: 'error',
        place: placeOfNode(source, node),
        message: `“${words}” is copied by hand from the bench session “${id}”, and stays as it is when the readings change.`,
        help: 'Write :value[family/profile clean-volts] for it: what our bench found is computed from its readings.',
        related: [],
      },
    ];
  });
}
