/** One type scale, one spacing scale, one set of inks: every style sheet takes them from tokens.css. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { papers } from '../../src/views/papers.ts';

const folder = new URL('../../src/styles/', import.meta.url);
const sheets = readdirSync(folder)
  .filter((file) => file.endsWith('.css') && file !== 'tokens.css')
  .map((file) => ({ file, css: withoutComments(readFileSync(new URL(file, folder), 'utf8')) }));
const tokens = withoutComments(readFileSync(new URL('tokens.css', folder), 'utf8'));

function withoutComments(css: string): string {
  return css.replaceAll(/\/\*.*?\*\//gs, '');
}

/** The declarations of a style sheet as [property, value]. */
function declarations(css: string): [string, string][] {
  return [...css.matchAll(/([a-z\d-]+)\s*:\s*([^;{}]+);/g)].map(([, property = '', value = '']) => [
    property,
    value.replaceAll(/\s+/g, ' '),
  ]);
}

/** What is set otherwise than by tokens, as `file: property: value`. */
function strays(isStray: (property: string, value: string) => boolean): string[] {
  return sheets.flatMap(({ file, css }) =>
    declarations(css)
      .filter(([property, value]) => isStray(property, value))
      .map(([property, value]) => `${file}: ${property}: ${value}`),
  );
}

describe('style sheets take from tokens.css', () => {
  test('sizes of type, save that of the root, a share of the reader’s own', () => {
    const isSize = (value: string): boolean =>
      /var\(--size-|inherit/.test(value) || /^([\d.]+em|75%)$|100% \//.test(value);
    expect(strays((property, value) => /^font(-size)?$/.test(property) && !isSize(value))).toEqual([]);
  });

  test('colours', () => {
    expect(
      strays((_, value) =>
        /#[\da-f]{3,8}\b|\b(rgb|hsl|oklch|lab)a?\(|\b(white|black|gr[ae]y|red)\b/i.test(value),
      ),
    ).toEqual([]);
  });

  test('space on the screen; millimetres are for paper', () => {
    const isSpace = /^(padding|margin|gap|row-gap|column-gap)(-|$)/;
    expect(strays((property, value) => isSpace.test(property) && /\d(rem|pt)\b/.test(value))).toEqual([]);
  });

  test('only names that are defined there', () => {
    const defined = new Set(declarations(tokens).map(([property]) => property));
    const used = sheets.flatMap(({ file, css }) => {
      const own = new Set(declarations(css).map(([property]) => property));
      return [...css.matchAll(/var\((--[a-z\d-]+)\)/g)]
        .map(([, name = '']) => name)
        .filter((name) => !defined.has(name) && !own.has(name) && name !== '--spot')
        .map((name) => `${file}: ${name}`);
    });
    expect(used).toEqual([]);
  });
});

test('the colours of the browser’s bars are the papers', () => {
  const found = [...tokens.matchAll(/--paper: (#[\da-f]{6});/g)].map(([, colour]) => colour);
  expect(found.slice(0, 2)).toEqual([papers.light, papers.dark]);
});
