import { readerRule } from '../rule.ts';

export const syntax = readerRule({
  id: 'syntax',
  title: 'Every file can be read: UTF-8 text, well-formed YAML, front matter or CSV.',
  explanation:
    'A file that cannot be read is left out whole, so it is named before anything else. Most often a quote or a bracket is not closed, a tab stands where spaces are needed, a key is written twice, or a decimal comma makes one cell too many in a sheet.',
});
