import { readerRule } from '../rule.ts';

export const syntax = readerRule({
  id: 'syntax',
  title: 'Every file can be read: UTF-8 text, well-formed YAML, front matter or CSV.',
  explanation:
    'A file that cannot be read is left out whole, so it is named before anything else. Most often a quote or a bracket is not closed, a tab stands where spaces are needed, a field stands twice, or a decimal comma makes one cell too many in a sheet.',
  severity: 'error',
  examples: [
    {
      title: 'a quotation mark that is not closed',
      file: 'profiles/moorlight/km-4417.yaml',
      good: 'code: "KM-4417"\n',
      bad: 'code: "KM-4417\n',
      foundAt: '"KM-4417',
    },
    {
      title: 'a tab where spaces are needed',
      file: 'plans/two-channel.yaml',
      good: 'input: { leastVolts: 1, mostVolts: 8 }',
      bad: 'input:\n	leastVolts: 1\n	mostVolts: 8',
      foundAt: '	leastVolts',
    },
    {
      title: 'a field that stands twice',
      file: 'profiles/moorlight/km-4417.yaml',
      good: 'origin: factory',
      bad: 'origin: factory\norigin: third-party',
      foundAt: 'origin: third-party',
    },
    {
      title: 'a decimal comma inside braces',
      file: 'outputs/2025-05-shed/session.yaml',
      good: '{ volts: 14.4, toleranceVolts: 0.1 }',
      bad: '{ volts: 14,4, toleranceVolts: 0.1 }',
      foundAt: '14,4',
    },
    {
      title: 'text with a colon in it, without quotation marks',
      file: 'profiles/moorlight/km-4417.yaml',
      good: 'about: Loud, with bass boost.',
      bad: 'about: Loud: with bass boost.',
      foundAt: 'Loud: with',
    },
    {
      title: 'a value that is taken for a link to another',
      file: 'profiles/moorlight/km-4417.yaml',
      good: 'about: Loud, with bass boost.',
      bad: 'about: *Loud*, with bass boost.',
      foundAt: '*Loud*',
    },
    {
      title: 'no space after a colon',
      file: 'profiles/moorlight/km-4417.yaml',
      good: 'origin: factory',
      bad: 'origin:factory',
      foundAt: 'origin:factory',
    },
  ],
});
