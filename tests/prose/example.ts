/** The example base with one guide, as a rider would read it or a contributor would get it back. */
import { answersOf } from '../../src/answers.ts';
import { type Entry, readBase } from '../../src/base/index.ts';
import { checkContent } from '../../src/check/index.ts';
import { proseHtml } from '../../src/views/prose.ts';
import { editedExample } from '../check/example-base.ts';

const head = (sources: string): string => `---
title: Sample
summary: A guide for tests.
order: 20
cautions: [parked]
sources: [${sources}]
---

`;

/** Lines of front matter before the body. */
export const headLines = 8;

const files = (body: string) =>
  editedExample([{ file: 'guides/sample.md', good: '', bad: `${head('maker-bulletin')}${body}` }]);

export async function answersWith(body: string) {
  const { base, findings } = await readBase(files(body));
  const guide = base.guides.get('sample');
  if (!guide) throw new Error('the guide cannot be read');
  return { answers: answersOf(base), guide: guide as Entry<'guides'>, findings };
}

/** The body as HTML, below the base path /help/. */
export async function html(body: string, topLevel: 2 | 3 = 2): Promise<string> {
  const { answers, guide } = await answersWith(body);
  return proseHtml(answers, guide, topLevel, '/help/');
}

/** What the check says of the body: “rule line:column message → help”, lines counted in the body. */
export async function findings(body: string): Promise<string[]> {
  const all = (await checkContent(files(body))).findings.filter((one) => one.severity !== 'note');
  return all.map(
    ({ rule, place, message }) => `${rule} ${place.line - headLines}:${place.column} ${message}`,
  );
}

/** The text each finding points at. */
export async function pointedAt(body: string): Promise<string[]> {
  const content = files(body);
  const { source } = await content.read('guides/sample.md');
  const all = (await checkContent(content)).findings.filter((one) => one.severity !== 'note');
  return all.map(({ place }) => {
    const lines = source.text.split('\n').slice(place.line - 1, place.endLine);
    const last = lines.length - 1;
    lines[last] = (lines[last] ?? '').slice(0, place.endColumn - 1);
    lines[0] = (lines[0] ?? '').slice(place.column - 1);
    return lines.join('\n');
  });
}
