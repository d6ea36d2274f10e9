import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TextFile } from '../../src/base/index.ts';
import { readYaml } from '../../src/base/yaml.ts';
import { linkMessage } from '../../src/base/yaml-errors.ts';

function read(text: string) {
  return readYaml(new TextFile('entry.yaml', text));
}

/** `line:column–line:column` of a place. */
function at(text: string, path: (string | number)[], part: 'key' | 'value' = 'value'): string {
  const { line, column, endLine, endColumn } = read(text).positions.place(path, part);
  return `${line}:${column}–${endLine}:${endColumn}`;
}

describe('positions', () => {
  const text = 'family: brasslight\nclaims:\n  - trait: muted\n    value: true\n';
  test('of a value and of its key', () => {
    expect(at(text, ['family'])).toBe('1:9–1:19');
    expect(at(text, ['family'], 'key')).toBe('1:1–1:7');
    expect(at(text, ['claims', 0, 'value'])).toBe('4:12–4:16');
  });
  test('of a missing key: its nearest parent that exists', () => {
    expect(at(text, ['claims', 0, 'channel'])).toBe('3:5–3:5');
    expect(at(text, ['claims', 7, 'channel'])).toBe('2:1–2:7');
    expect(at(text, ['nothing'])).toBe('1:1–1:1');
  });
  test('with CRLF line ends, a byte-order mark, and text beyond the basic plane', () => {
    expect(at(text.replaceAll('\n', '\r\n'), ['claims', 0, 'value'])).toBe('4:12–4:16');
    expect(at(`\uFEFF${text}`, ['family'])).toBe('1:9–1:19');
    expect(at('a: "🏍🏍"\nb: 1\n', ['b'])).toBe('2:4–2:5');
  });
  test('of an empty value: right after its key', () => {
    expect(at('a:\nb: 1\n', ['a'])).toBe('1:3–1:3');
  });
  test('inside flow blocks', () => {
    expect(at('input: { leastVolts: 1, mostVolts: 8 }\n', ['input', 'mostVolts'])).toBe('1:36–1:37');
  });
});

describe('what YAML would quietly turn into something else is kept in view', () => {
  test.each([
    ['0x7E8', 2024],
    ['1.10', 1.1],
    ['012', 12],
    ['1e3', 1000],
    ['~', null],
    ['true', true],
  ])('%s becomes %s, and the source text is known', (written, read_) => {
    const { data, positions } = read(`code: ${written}\n`);
    expect(data).toEqual({ code: read_ });
    expect(positions.sourceOf(['code'])).toBe(written);
  });
  test.each(['no', 'yes', 'on', '2026-03-14', '12:30'])('%s stays text (YAML 1.2 core schema)', (written) => {
    expect(read(`value: ${written}\n`).data).toEqual({ value: written });
  });
});

describe('a file that is not YAML is refused at the place to mend', () => {
  test.each([
    ['a: 1\na: 2\n', '2:1', '“a” stands twice in the same block.'],
    ['a:\n\tb: 1\n', '2:1', 'A tab stands where spaces are needed.'],
    ['a:\n  b: 1\n c: 2\n', '3:1', 'This line is not indented like its neighbours.'],
    ['a: 1\n---\nb: 2\n', '2:1', 'A second document begins here.'],
    ['a: "open\nb: 2\n', '1:4', 'A quote or bracket is opened here and never closed.'],
    ['a: @x\n', '1:4', 'Text cannot begin with the sign @ unless it stands in quotes.'],
    ['a: &x 1\nb: *x\n', '1:4', linkMessage],
    ['a: &a [*a]\n', '1:4', linkMessage],
  ])('%j', (text, place, message) => {
    const { data, findings } = read(text);
    expect(data).toBeUndefined();
    expect(findings.map((one) => `${one.place.line}:${one.place.column} ${one.message}`)).toEqual([
      `${place} ${message}`,
    ]);
  });
  test('an alias bomb is refused without being expanded', () => {
    const bomb = `a: &a [x,x]\n${[...'bcdefghij'].map((c, i) => `${c}: &${c} [*${'abcdefghi'[i]},*${'abcdefghi'[i]}]`).join('\n')}\n`;
    expect(read(bomb).data).toBeUndefined();
  });
});

test('any text gives data or a finding inside the file, and never throws', () => {
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string({ unit: 'binary' }),
        fc.string({ unit: fc.constantFrom(...'ab:- \n\t"\'[]{}&*#|>?!%@`0123') }),
      ),
      (text) => {
        const { data, findings } = read(text);
        const lines = text.split('\n').length;
        for (const { place } of findings) {
          expect(place.line).toBeGreaterThanOrEqual(1);
          expect(place.line).toBeLessThanOrEqual(lines + 1);
        }
        expect(findings.length > 0 ? data === undefined : true).toBe(true);
      },
    ),
    { numRuns: 1000, seed: 20260314 },
  );
});
