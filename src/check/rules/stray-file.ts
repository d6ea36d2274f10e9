import { readerRule } from '../rule.ts';

export const strayFile = readerRule({
  id: 'stray-file',
  title: 'Every file of the content folder is an entry, and lies where its kind is kept.',
  explanation:
    'A file in the wrong folder, with another ending or with capitals in its name is read by nobody, and its author would believe it published. Links to places outside the folder are not followed. Hidden files, whose names begin with a point, are left alone.',
  severity: 'error',
  examples: [
    {
      title: 'a name that cannot stand in an address',
      file: 'profiles/moorlight/KM 4418.yaml',
      good: '',
      bad: 'family: moorlight\n',
    },
  ],
});
