import { readerRule } from '../rule.ts';

export const unknownKey = readerRule({
  id: 'unknown-key',
  title: 'No entry has a field, and no sheet a column, that its kind does not know.',
  explanation:
    'A misspelt field would be passed over in silence and its value lost. The nearest known name is offered where there is one.',
  severity: 'error',
  examples: [
    {
      title: 'a misspelt field',
      file: 'profiles/moorlight/km-4417.yaml',
      good: 'origin: factory',
      bad: 'orign: factory',
      foundAt: 'orign',
    },
    {
      title: 'a field in another unit',
      file: 'statements/bulletin-loud-profile.yaml',
      good: 'valueVolts: 6.3',
      bad: 'valueMillivolts: 6300',
      foundAt: 'valueMillivolts',
    },
  ],
});
