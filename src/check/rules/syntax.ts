import { readerRule } from '../rule.ts';

export const syntax = readerRule({
  id: 'syntax',
  title: 'Every file can be read: UTF-8 text, well-formed YAML, front matter or CSV.',
  explanation:
    'A file that cannot be read is left out whole, so it is named before anything else. Most often a quote or a bracket is not closed, a tab stands where spaces are needed, a key is written twice, or a decimal comma makes one cell too many in a sheet.',
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
  ],
});
