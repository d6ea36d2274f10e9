import { expect, test } from 'vitest';
import { phrase, taggedParts } from '../../src/words/index.ts';

test('a text is parted at its own marks, never at what a value brings along', () => {
  const name = '<script>alert(1)</script> & <link>x</link>';
  expect(taggedParts(phrase('See <link>{name}</link> of {name}.', { name }))).toEqual([
    { text: 'See ' },
    { tag: 'link', text: name },
    { text: ` of ${name}.` },
  ]);
  expect(phrase('Readings of {code}', { code: '<b>' })).toBe('Readings of <b>');
});
