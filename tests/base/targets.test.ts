import { expect, test } from 'vitest';
import { targetOf } from '../../src/base/index.ts';
import * as paths from '../../src/views/paths.ts';

test('the page of every kind of entry is known by its address, and leads back to it', () => {
  const pages = [
    paths.unitPath('a'),
    paths.profilePath('a/b'),
    paths.readingsPath('a/b'),
    paths.guidePath('a'),
    paths.planPath('a'),
    paths.sourcePath('a'),
  ];
  for (const page of pages) {
    const target = targetOf(`/${page}#x`, 'guides/g.md');
    expect(target).toMatchObject({ to: 'entry', hash: 'x' });
    expect(target.to === 'entry' && paths.addressPath(target)).toBe(page);
  }
  const lists = [paths.unitsPath, paths.plansPath, paths.guidesPath, paths.sourcesPath, paths.codesPath, ''];
  for (const list of lists) expect(targetOf(`/${list}`, 'guides/g.md')).toEqual({ to: 'page', path: list });
});

test('a path without a slash is that of a file, counted from the entry’s own', () => {
  expect(targetOf('../profiles/a/b.yaml', 'guides/g.md')).toMatchObject({ kind: 'profiles', id: 'a/b' });
  expect(targetOf('./h.md', 'guides/g.md')).toMatchObject({ kind: 'guides', id: 'h' });
  expect(targetOf('../h.md', 'guides/deep/g.md')).toMatchObject({ kind: 'guides', id: 'h' });
  expect(targetOf('../../../h.md', 'guides/g.md')).toEqual({ to: 'nothing' });
  expect(targetOf('h.txt', 'guides/g.md')).toEqual({ to: 'nothing' });
  expect(targetOf('', 'guides/g.md')).toEqual({ to: 'nothing' });
});

test('addresses out of the site are told by their scheme', () => {
  expect(targetOf('HTTPS://x.example/', 'guides/g.md')).toEqual({ to: 'outside', scheme: 'https' });
  expect(targetOf('//x.example/', 'guides/g.md')).toEqual({ to: 'outside', scheme: '' });
  expect(targetOf('#%C3%A9', 'guides/g.md')).toEqual({ to: 'anchor', id: 'é' });
  expect(targetOf('#%zz', 'guides/g.md')).toEqual({ to: 'anchor', id: '%zz' });
});
