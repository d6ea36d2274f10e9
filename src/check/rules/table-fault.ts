import { type Entry, type Finding, nearest } from '../../base/index.ts';
import type { EntryFault } from '../../tables/index.ts';
import type { Rule } from '../rule.ts';

export const tableFault: Rule = {
  id: 'table-fault',
  title: 'Every test and every answer of a decision table can be read.',
  explanation:
    'Each rule of a table tests some of its inputs (when) and answers each of its outputs (give), both by their ids. A test is a value, “< 4.2”, “>= 1”, a range such as “[1..3]” (a round bracket leaves the end out), several of these with commas between them, or “not(…)”; a column left out may be anything. Tests stand in quotation marks, because YAML takes > and [ at their beginning for signs of its own, and numbers in them stand without a unit: the column has it. A test that is more than this, such as a formula, could not be proved free of gaps, so it is refused. As long as a table has such a fault, nothing else is said about it.',
  severity: 'error',
  examples: [
    {
      title: 'a misspelt column',
      file: 'tables/behind-an-amplifier.yaml',
      good: 'when: { clean-volts: "< 1" }',
      bad: 'when: { claen-volts: "< 1" }',
      foundAt: 'claen-volts',
    },
    {
      title: 'a value the column does not have',
      file: 'tables/behind-an-amplifier.yaml',
      good: '{ boost-goes: "fixed", equaliser: "yes" }',
      bad: '{ boost-goes: "fixt", equaliser: "yes" }',
      foundAt: '"fixt"',
    },
    {
      title: 'a number with its unit',
      file: 'tables/behind-an-amplifier.yaml',
      good: '"< 1"',
      bad: '"< 1 V"',
    },
    {
      title: 'a comma for the decimal point',
      file: 'tables/rear-speakers.yaml',
      good: '"<= 10"',
      bad: '"<= 10,5"',
    },
    {
      title: 'the ends of a range exchanged',
      file: 'tables/rear-speakers.yaml',
      good: '"[0..10]"',
      bad: '"[10..0]"',
    },
    {
      title: 'a formula',
      file: 'tables/rear-speakers.yaml',
      good: '"> 10"',
      bad: '"> 5 * 2"',
    },
    {
      title: 'an answer that is not on the list',
      file: 'tables/behind-an-amplifier.yaml',
      good: 'give: { answer: keep }',
      bad: 'give: { answer: keeep }',
      foundAt: 'keeep',
    },
    {
      title: 'an answer left out',
      file: 'tables/rear-speakers.yaml',
      good: 'give: { from: front, gauge: 16 }',
      bad: 'give: { from: front }',
      foundAt: 'give',
    },
    {
      title: 'two rules of one name',
      file: 'tables/behind-an-amplifier.yaml',
      good: '- id: plain\n    when: {}',
      bad: '- id: too-quiet\n    when: {}',
      foundAt: 'too-quiet',
    },
    {
      title: 'a sum of words',
      file: 'tables/behind-an-amplifier.yaml',
      good: 'hit: first\n',
      bad: 'hit: collect\naggregate: sum\n',
      foundAt: 'sum',
    },
  ],
  check: ({ answers: { base, tables } }) =>
    [...tables].flatMap(([id, { faults }]) => {
      const entry = base.tables.get(id);
      return entry ? faults.map((fault) => faultFinding(entry, fault)) : [];
    }),
};

function faultFinding(
  entry: Entry<'tables'>,
  { path, part, message, help, unknown, also = [] }: EntryFault,
): Finding {
  const guess = unknown && nearest(unknown.name, unknown.known);
  const written = entry.sourceOf(path) ?? '';
  // YAML makes an empty text of >4 and what follows it.
  if (part === 'value' && /^[>|]=?\s*-?[\d.]/.test(written)) {
    const [line = ''] = written.split('\n');
    return bareSign(entry, path, line.trim());
  }
  return {
    rule: 'table-fault',
    severity: 'error',
    place: entry.place(path, part),
    message: clipped(message),
    help: clipped(guess === undefined ? help : `Did you mean “${guess}”? ${help}`),
    related: also.map((other) => ({ place: entry.place(other, part), message: 'Here too.' })),
  };
}

/** Quotations cut where they are long: the file has them in full. */
function clipped(text: string): string {
  return text.replace(/“([^“”]{60})[^“”]{20,}”/g, '“$1…”').replace(/"([^"]{60})[^"]{20,}"/g, '"$1…"');
}

function bareSign(entry: Entry<'tables'>, path: EntryFault['path'], written: string): Finding {
  return {
    rule: 'table-fault',
    severity: 'error',
    place: entry.place(path),
    message: `Without quotes, the sign ${written.charAt(0)} begins a long text, and this one is empty.`,
    help: `Put the test in quotes: "${written}".`,
    related: [],
  };
}
