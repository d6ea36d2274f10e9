import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { circleGroups, circlesOf } from '../../src/check/circles.ts';
import { exampleFiles } from './example-base.ts';
import { add, edit, told } from './told.ts';

const naming = (links: Readonly<Record<string, readonly string[]>>) => new Map(Object.entries(links));

describe('circles', () => {
  test('are found once each, by their shortest way, from the first id on', () => {
    expect(circlesOf(naming({ a: ['b'], b: ['c'], c: ['a', 'b'], d: ['a'] }))).toEqual([['a', 'b', 'c']]);
    expect(circlesOf(naming({ a: ['b'], b: ['c'], c: [] }))).toEqual([]);
    expect(circlesOf(naming({ x: ['a'], a: ['b'], b: ['a'], c: ['d'], d: ['c'] }))).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ]);
  });

  test('an id that names itself is one, and ids without an entry lead nowhere', () => {
    expect(circlesOf(naming({ a: ['a', 'gone'], b: ['a'] }))).toEqual([['a']]);
  });

  test('a chain of a hundred thousand does not exhaust the stack', () => {
    const length = 100_000;
    const long = new Map(
      Array.from({ length }, (_, index) => [`${index}`, [`${(index + 1) % length}`]] as const),
    );
    expect(circlesOf(long)[0]).toHaveLength(length);
  });

  // Two ids are in one group exactly where each leads to the other: the definition, walked out by hand.
  test('groups are the ids that lead to one another', () => {
    const graphs = fc.array(fc.array(fc.nat(7), { maxLength: 3 }), { minLength: 8, maxLength: 8 });
    fc.assert(
      fc.property(graphs, (links) => {
        const graph = new Map(links.map((named, id) => [`${id}`, named.map(String)]));
        const reach = (from: string): Set<string> => {
          const seen = new Set<string>();
          const open = [...(graph.get(from) ?? [])];
          for (let id = open.pop(); id !== undefined; id = open.pop()) {
            if (seen.has(id)) continue;
            seen.add(id);
            open.push(...(graph.get(id) ?? []));
          }
          return seen;
        };
        const groups = circleGroups(graph);
        for (const a of graph.keys()) {
          for (const b of graph.keys()) {
            if (a === b) continue;
            const together = groups.has(a) && groups.get(a) === groups.get(b);
            expect(together).toBe(reach(a).has(b) && reach(b).has(a));
          }
        }
        for (const circle of circlesOf(graph)) {
          circle.forEach((id, index) => {
            expect(graph.get(id)).toContain(circle[(index + 1) % circle.length]);
          });
          expect(new Set(circle).size).toBe(circle.length);
        }
      }),
    );
  });
});

describe('links that come back', () => {
  test('a profile the same as itself', async () => {
    expect(
      await told(
        edit('profiles/moorlight/rt-5561.yaml', 'sameAs: moorlight/km-4417', 'sameAs: moorlight/rt-5561'),
      ),
    ).toContain(
      'circular-link profiles/moorlight/rt-5561.yaml: “moorlight/rt-5561” is said to be the same as itself.',
    );
  });

  test('a circle of sources is named once, and its dates are not held against it', async () => {
    expect(
      await told(
        edit('sources/maker-bulletin.yaml', 'trust: medium\n', 'trust: high\nrestsOn: [rider-letter]\n'),
      ),
    ).toEqual([
      'circular-link sources/maker-bulletin.yaml: These sources rest on one another and on nothing else: “maker-bulletin” → “rider-letter” → “maker-bulletin”.',
    ]);
  });

  test('two codes told apart from each other are no circle', async () => {
    const hint = (from: string) =>
      `system: unamplified\ntellApart:\n  - { from: ${from}, hint: Look twice. }\n`;
    expect(
      await told(
        edit('profiles/moorlight/km-4417.yaml', 'system: unamplified\n', hint('moorlight/rt-5561')),
        edit('profiles/moorlight/rt-5561.yaml', 'system: unamplified\n', hint('moorlight/km-4417')),
      ),
    ).toEqual([]);
  });
});

describe('entries that are of use to none', () => {
  const newSource = add(
    'sources/second-letter.yaml',
    'kind: riders-report\ntitle: Another letter\ndate: 2025-10-01\nkeptAt: Letters\ntrust: low\ntrustReason: One ear.\n',
  );

  test('a source no entry cites, and no longer once one does', async () => {
    expect(await told(newSource)).toEqual([
      'orphaned-entry sources/second-letter.yaml: No entry cites the source “second-letter”.',
    ]);
    const cited = edit(
      'profiles/fellside/310.yaml',
      'sources: [maker-bulletin]',
      'sources: [maker-bulletin, second-letter]',
    );
    expect(await told(newSource, cited)).toEqual([]);
  });

  test('a family without a profile', async () => {
    const family = exampleFiles.get('families/fellside.md');
    const other = (family ?? '').replace('name: Fellside', 'name: Hillside').replace('Ordwick', 'Solvane');
    expect(await told(add('families/hillside.md', other))).toContain(
      'orphaned-entry families/hillside.md: The family “hillside” has no profile, so its page lists no code.',
    );
  });

  test('a session whose sheet has a header alone', async () => {
    const session = (exampleFiles.get('outputs/2026-02-loft/session.yaml') ?? '').replace(
      'bench: loft',
      'bench: yard',
    );
    expect(
      await told(
        add('outputs/2026-02-yard/session.yaml', session),
        add('outputs/2026-02-yard/readings.csv', 'profile,channel,step,hz,voltsRms,thdPercent,repeat\n'),
      ),
    ).toEqual([
      'orphaned-entry outputs/2026-02-yard/session.yaml: The sheet of the session “2026-02-yard” has no reading.',
    ]);
  });

  test('is not told while a file cannot be read: it may be what cites the source', async () => {
    const findings = await told(edit('statements/letter-rear.yaml', 'value: false', 'value: no'));
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatch(/^schema statements\/letter-rear.yaml: /);
  });
});
