import { expect, test } from 'vitest';
import { siteAddress } from '../../src/views/address.ts';
import { relativePath } from '../../src/views/paths.ts';

test('the base path is added to the address, unless it ends in it', () => {
  expect(siteAddress('https://shop.example', '/')).toBe('https://shop.example/');
  expect(siteAddress('https://shop.example', '/help/')).toBe('https://shop.example/help/');
  expect(siteAddress('https://shop.example/help', '/help/')).toBe('https://shop.example/help/');
  expect(siteAddress('https://shop.example/shop/', '/')).toBe('https://shop.example/shop/');
  expect(siteAddress('https://shop.example/shop', '/help')).toBe('https://shop.example/shop/help/');
  expect(siteAddress('https://shop.example/myhelp', '/help/')).toBe('https://shop.example/myhelp/help/');
});

test('a relative path leads back to where it is meant to (RFC 3986, section 5.2, by the URL class)', () => {
  const paths = ['a.json', 'x/a.json', 'x/y/b.json', 'x/z/w/c.json', 'q/'];
  for (const from of paths) {
    for (const to of paths) {
      const relative = relativePath(from, to);
      if (from === to) continue;
      expect(new URL(relative, `https://s.example/help/${from}`).pathname, `${from} → ${to}`).toBe(
        `/help/${to}`,
      );
    }
  }
});
