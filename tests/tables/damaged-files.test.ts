/** Files damaged in any way are refused with a place, or read; nothing else is thrown. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { rowsFromCsv } from '../../src/tables/csv.ts';
import { decideDmn, decisionFaults, readDmn, tableOfDecision } from '../../src/tables/dmn/index.ts';
import { UnusableFile } from '../../src/tables/file-fault.ts';

const folder = new URL('dmn-files/', import.meta.url);
const dmn = readdirSync(folder).map((name) => readFileSync(new URL(name, folder), 'utf8'));
const csv = [
  'rule: first,when: clean volts (V; from 0),when: goes (none | fixed),give: answer (keep | reflash),say\nquiet,< 1,-,reflash,"Too, quiet."\nmoves,>= 1,"none, fixed",keep,\nif no rule fits,,,keep,\n',
  'rule;when: a (V);give: b (dB)\nx;< 3;-3,9\ny;[3..5);4\n',
];

/** A text with a piece taken out, doubled, or replaced. */
const damaged = (texts: readonly string[]): fc.Arbitrary<string> =>
  fc
    .record({
      text: fc.constantFrom(...texts),
      // In equal parts of the text: floating-point numbers would nearly all lie at its start.
      at: fc.integer({ min: 0, max: 999 }),
      length: fc.nat(40),
      by: fc.oneof(
        fc.constant(''),
        fc.string({ unit: 'binary', maxLength: 10 }),
        fc.constantFrom(
          '<',
          '>',
          '&',
          '"',
          "'",
          '\u0000',
          ']]>',
          '<!--',
          '<?',
          '<![CDATA[',
          '((((',
          ',',
          ';',
          '\r',
          '-',
          'null',
          '∞',
          '{',
          '@',
          '?',
        ),
      ),
      twice: fc.boolean(),
    })
    .map(({ text, at, length, by, twice }) => {
      const start = Math.floor((at * text.length) / 1000);
      const piece = text.slice(start, start + length);
      return text.slice(0, start) + by + (twice ? piece + piece : '') + text.slice(start + length);
    });

/** Runs it; `UnusableFile` is the one thing it may throw, and its place lies within the text. */
function orRefused(text: string, run: () => void): 'read' | 'refused' {
  try {
    run();
    return 'read';
  } catch (error) {
    if (!(error instanceof UnusableFile)) throw error;
    expect(error.message.length).toBeGreaterThan(5);
    expect(error.span.start).toBeGreaterThanOrEqual(0);
    expect(error.span.start).toBeLessThanOrEqual(text.length);
    return 'refused';
  }
}

test('DMN', () => {
  const seen = { read: 0, refused: 0 };
  fc.assert(
    fc.property(damaged(dmn), (text) => {
      const how = orRefused(text, () => {
        const file = readDmn(text);
        for (const decision of file.decisions) {
          tableOfDecision(file, decision);
          for (const { span } of decisionFaults(file, decision))
            expect(span.start).toBeLessThanOrEqual(text.length);
          orRefused(text, () =>
            decideDmn(file, decision, { volts: 2, 'Clean volts': 2, 'Wanted volts': 3, step: 4, a: 1, b: 2 }),
          );
        }
      });
      seen[how] += 1;
    }),
    { numRuns: 400 },
  );
  expect(seen.read).toBeGreaterThan(20);
  expect(seen.refused).toBeGreaterThan(20);
});

test('CSV', () => {
  const seen = { read: 0, refused: 0, faulty: 0 };
  fc.assert(
    fc.property(damaged(csv), (text) => {
      const how = orRefused(text, () => {
        const { faults, table } = rowsFromCsv(text, 't');
        expect(table === undefined).toBe(faults.length > 0);
        for (const { span } of faults) expect(span.start).toBeLessThanOrEqual(text.length);
        if (faults.length > 0) seen.faulty += 1;
      });
      seen[how] += 1;
    }),
    { numRuns: 400 },
  );
  expect(seen.read - seen.faulty).toBeGreaterThan(20);
  expect(seen.faulty).toBeGreaterThan(20);
});
