/**
 * The feed against RFC 4287 (The Atom Syndication Format), 4151 (tag URIs) and 3339 (instants); sections named beside
 * each check, their wording from memory. Read by `sax`, a strict parser that had no part in writing it.
 */
import sax from 'sax';
import { expect, test } from 'vitest';
import type { ProfileChange } from '../../src/views/changes/compare.ts';
import { changesFeed } from '../../src/views/changes/feed.ts';
import { element, xmlText } from '../../src/views/xml.ts';
import { demoAnswers } from '../views/sample.ts';

const answers = await demoAnswers();
const published = { address: 'https://shop.example/help/', date: '2026-03-01' };

interface Node {
  readonly name: string;
  readonly namespace: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Node[];
  text: string;
}

function read(xml: string): Node {
  const parser = sax.parser(true, { xmlns: true, strictEntities: true });
  const root: Node = { name: '', namespace: '', attributes: {}, children: [], text: '' };
  const open = [root];
  parser.onerror = (error) => {
    throw error;
  };
  parser.onopentag = (tag) => {
    const { local, uri, attributes } = tag;
    const values = Object.fromEntries(Object.entries(attributes).map(([key, { value }]) => [key, value]));
    const node: Node = { name: local, namespace: uri, attributes: values, children: [], text: '' };
    open.at(-1)?.children.push(node);
    open.push(node);
  };
  parser.ontext = (text) => {
    const last = open.at(-1);
    if (last) last.text += text;
  };
  parser.onclosetag = () => void open.pop();
  parser.write(xml).close();
  const [top] = root.children;
  if (!top) throw new Error('no element');
  return top;
}
const all = (node: Node, name: string) => node.children.filter((child) => child.name === name);
const only = (node: Node, name: string) => {
  const [first, ...more] = all(node, name);
  expect(more, name).toEqual([]);
  if (!first) throw new Error(`no ${name}`);
  return first.text;
};

/** As if one profile had been measured lower and judged otherwise, one were new, and one gone. */
const [first, second] = [...answers.base.profiles.values()];
const sentences = [
  'For the plan “Two channels, front” the answer is now “Keep”; before, “Reflash”.',
  'Clean output: 5.12\u00a0V ±\u00a00.03\u00a0V; before, 2.56\u00a0V ±\u00a00.02\u00a0V.',
];
const changes: ProfileChange[] = [
  { profile: first?.id ?? '', code: first?.data.code ?? '', kind: 'changed', sentences },
  { profile: second?.id ?? '', code: second?.data.code ?? '', kind: 'new', sentences: [] },
  { profile: 'brasslight/gone', code: 'G & <0>', kind: 'gone', sentences: [] },
];
const since = { changes: () => changes, commit: 'c'.repeat(40), date: '2026-02-01' };
const text = changesFeed(answers, published, since).text();
const feed = read(text);

test('4.1.1 feed: exactly one id, title and updated, an author, a link to itself', () => {
  expect([feed.name, feed.namespace]).toEqual(['feed', 'http://www.w3.org/2005/Atom']);
  for (const name of ['id', 'title', 'updated']) expect(only(feed, name)).not.toBe('');
  // 4.2.6: an id is an IRI.
  expect(only(feed, 'id')).toBe('https://shop.example/help/changes.atom');
  // 3.2: a Person construct has exactly one name.
  expect(all(feed, 'author')).toHaveLength(1);
  expect(only(all(feed, 'author')[0] as Node, 'name')).not.toBe('');
  const rels = all(feed, 'link').map(({ attributes }) => [attributes.rel, attributes.href]);
  expect(rels).toEqual([
    ['self', 'https://shop.example/help/changes.atom'],
    ['alternate', 'https://shop.example/help/'],
  ]);
});

test('4.1.2 entry: exactly one id, title and updated; ids are tag URIs (RFC 4151) and none stands twice', () => {
  const entries = all(feed, 'entry');
  expect(entries.length).toBe(changes.length + answers.base.outputs.size);
  const ids = entries.map((entry) => only(entry, 'id'));
  for (const id of ids)
    expect(id).toMatch(/^tag:shop\.example,\d{4}-\d{2}-\d{2}:\/help\/(changes|sessions)\/[\w/.-]+$/);
  expect(new Set(ids).size).toBe(ids.length);
  for (const entry of entries) {
    expect(only(entry, 'title')).not.toBe('');
    // 3.3: date-time of RFC 3339 with upper-case T and Z.
    expect(only(entry, 'updated')).toMatch(/^\d{4}-\d{2}-\d{2}T00:00:00Z$/);
    // 4.1.3.1: content of type text has no child elements.
    const [content] = all(entry, 'content');
    expect(content?.attributes.type).toBe('text');
    expect(content?.children).toEqual([]);
    expect(all(entry, 'link')[0]?.attributes.href).toMatch(/^https:\/\/shop\.example\/help\//);
  }
  // 4.2.15: the most recent instant in which it was modified.
  const dates = entries.map((entry) => only(entry, 'updated')).sort();
  expect(only(feed, 'updated')).toBe(dates.at(-1));
});

test('it says in sentences what moved, what flipped, what is new and what is gone', () => {
  const titles = all(feed, 'entry').map((entry) => only(entry, 'title'));
  expect(titles.filter((title) => title.startsWith('Changed: '))).toHaveLength(1);
  expect(titles.filter((title) => title.startsWith('New: '))).toHaveLength(1);
  expect(titles).toContain('No longer listed: G & <0> (Brasslight)');
  const moved = all(feed, 'entry').find((entry) => only(entry, 'title').startsWith('Changed: ')) as Node;
  expect(only(moved, 'content').split('\n')).toEqual(sentences);
});

test('without an earlier revision it lists the bench sessions, newest first, under the same ids', () => {
  const plain = read(changesFeed(answers, published, undefined).text());
  const sessions = all(plain, 'entry');
  const dates = sessions.map((entry) => only(entry, 'updated'));
  expect(dates).toEqual([...dates].sort().reverse());
  expect(sessions.length).toBe(answers.base.outputs.size);
  const known = all(feed, 'entry').map((entry) => only(entry, 'id'));
  for (const entry of sessions) expect(known).toContain(only(entry, 'id'));
});

test('built again on another day the ids stay, and the same input gives the same bytes', () => {
  expect(changesFeed(answers, published, since).text()).toBe(text);
  const later = read(changesFeed(answers, { ...published, date: '2026-03-09' }, since).text());
  const ids = (node: Node) => all(node, 'entry').map((entry) => only(entry, 'id'));
  expect(ids(later)).toEqual(ids(feed));
});

test('text comes back as it went in, but for characters XML does not have (XML 1.0, section 2.2)', () => {
  const hard = 'a & b < c > d "e" \u00a0± 😀 ]]>';
  const node = read(xmlText(element('x', { y: hard }, `${hard}\u0000\u0008`)));
  expect(node.text).toBe(hard);
  expect(node.attributes.y).toBe(hard);
});
