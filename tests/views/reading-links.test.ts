import { expect, test } from 'vitest';
import {
  firstRowPath,
  readingBook,
  readingRows,
  rowPath,
  sourceLinks,
} from '../../src/views/reading-links.ts';
import { demoAnswers } from './sample.ts';

test('rows that follow one another are joined, whatever order they are named in', () => {
  expect(readingRows(['a-1:7', 'a-1:5', 'a-1:6', 'a-1:9', 'b-2:3', 'a-1:5'])).toEqual([
    {
      session: 'a-1',
      rows: [
        [5, 7],
        [9, 9],
      ],
    },
    { session: 'b-2', rows: [[3, 3]] },
  ]);
});

test('no readings, no rows and no link', () => {
  expect(readingRows([])).toEqual([]);
  expect(firstRowPath({ path: 'profiles/f/c/readings/', sessions: {} }, [])).toBeUndefined();
});

test('a link leads to the anchor of the first row', () => {
  const book = { path: 'profiles/f/c/readings/', sessions: {} };
  expect(rowPath(book, '2026-03-quay', 17)).toBe('profiles/f/c/readings/#r-2026-03-quay-17');
  expect(firstRowPath(book, readingRows(['a-1:9', 'a-1:4']))).toBe('profiles/f/c/readings/#r-a-1-4');
});

test('the book of a profile cites each session that measured it, at its conditions', async () => {
  const answers = await demoAnswers();
  const [profile, sessions] = [...answers.base.sessionsOfProfile].find(([, some]) => some.length > 1) ?? [
    '',
    [],
  ];
  const book = readingBook(answers, profile);
  expect(Object.keys(book.sessions)).toEqual(sessions.map(({ id }) => id));
  for (const { id, data } of sessions) {
    expect(book.sessions[id]).toEqual({
      title: answers.base.sources.get(data.source)?.data.title,
      path: `sources/${data.source}/#session-${id}`,
    });
  }
});

test('a source that is not there is left out, one named twice stands once', async () => {
  const answers = await demoAnswers();
  const id = [...answers.base.sources.keys()][0] ?? '';
  expect(sourceLinks(answers, [id, 'no-such-source', id]).map((link) => link.id)).toEqual([id]);
});
