import { readerRule } from '../rule.ts';

export const danglingLink = readerRule({
  id: 'dangling-link',
  title: 'Every entry that is named exists.',
  explanation:
    'Entries name each other by id: the path inside the kind’s folder, without the file ending. A profile names its family and sources, a sheet its profiles, a statement its source and the profiles it speaks of.',
  severity: 'error',
  examples: [
    {
      title: 'a source that is not there',
      file: 'statements/letter-rear.yaml',
      good: 'source: rider-letter',
      bad: 'source: riders-leter',
      foundAt: 'riders-leter',
    },
  ],
});
