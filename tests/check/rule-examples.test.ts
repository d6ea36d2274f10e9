/** Every rule is held to its own examples: the good text is without fault, the bad one makes it speak once. */
import { describe, expect, test } from 'vitest';
import { checkContent, rules } from '../../src/check/index.ts';
import { editedExample, textOf } from './example-base.ts';

test('the example base is without fault', async () => {
  const { findings } = await checkContent(editedExample([]));
  expect(findings).toEqual([]);
});

test('ids are words joined by hyphens, each used once; titles are sentences', () => {
  expect(new Set(rules.map((rule) => rule.id)).size).toBe(rules.length);
  for (const rule of rules) {
    expect(rule.id).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(rule.title).toMatch(/^[A-Z“].*\.$/);
    expect(rule.explanation.length).toBeGreaterThan(80);
  }
});

const earlier = { checked: await checkContent(editedExample([])), renames: [] };

describe.each(rules.map((rule) => ({ id: rule.id, rule })))('$id', ({ rule }) => {
  test.each(rule.examples.map((example) => ({ title: example.title, example })))(
    '$title',
    async ({ example }) => {
      const files = editedExample([example, ...(example.also ?? [])]);
      // Rules that compare states see the change from the example base; others would be joined by them.
      const settings = { today: '2026-11-01', ...(rule.comparesStates && { earlier }) };
      const all = (await checkContent(files, settings)).findings;
      // News may come with a mistake; a rule of news is held to its own.
      const findings = all.filter((one) => one.severity !== 'note' || rule.severity === 'note');
      const shown = findings.map(
        (one) =>
          `${one.severity} ${one.rule} ${one.place.file}:${one.place.line}:${one.place.column} ${one.message}`,
      );
      expect(shown).toHaveLength(1);
      const [finding] = findings;
      expect(finding?.rule).toBe(rule.id);
      expect(finding?.severity).toBe(rule.severity);
      const file = example.foundIn ?? example.file;
      expect(finding?.place.file).toBe(file);
      const text = textOf(files, file);
      const start = example.foundIn === undefined ? text.indexOf(example.bad) : 0;
      const at = example.foundAt === undefined ? start : text.indexOf(example.foundAt, start);
      expect(at, `“${example.foundAt ?? ''}” is not in ${file}`).toBeGreaterThanOrEqual(0);
      const before = text.slice(0, at);
      expect(`${finding?.place.line}:${finding?.place.column}`).toBe(
        `${before.split('\n').length}:${at - before.lastIndexOf('\n')}`,
      );
    },
  );
});
