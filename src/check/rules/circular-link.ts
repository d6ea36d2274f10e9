import type { Base, Finding, Place } from '../../base/index.ts';
import { circlesOf } from '../circles.ts';
import type { Rule } from '../rule.ts';
import { restingOn } from '../source-roots.ts';

export const circularLink: Rule = {
  id: 'circular-link',
  title: 'No entry leads back to itself.',
  explanation:
    'Some links explain one entry by another: a profile is the same as another (sameAs), a source was taken from another (restsOn), a code is told apart from another (tellApart). Where such links come back to the entry they began at, they explain nothing: two profiles that are each only “the same as” the other, two sources that each quote the other. Follow the links, and take out the one that points the wrong way.',
  severity: 'error',
  examples: [
    {
      title: 'two profiles, each the same as the other',
      file: 'profiles/moorlight/km-4417.yaml',
      good: 'system: unamplified\n',
      bad: 'system: unamplified\nsameAs: moorlight/rt-5561\n',
      foundAt: 'moorlight/rt-5561',
    },
    {
      title: 'a source that comes from one taken from it',
      file: 'sources/maker-bulletin.yaml',
      good: 'trust: medium\n',
      bad: 'trust: medium\nrestsOn: [rider-letter]\n',
      foundAt: 'rider-letter',
    },
    {
      title: 'a code to be told apart from itself',
      file: 'profiles/moorlight/kn-2093.yaml',
      good: 'system: amplified\n',
      bad: 'system: amplified\ntellApart:\n  - { from: moorlight/kn-2093, hint: The second letter is an N. }\n',
      foundAt: 'moorlight/kn-2093',
    },
  ],
  check: ({ answers: { base } }) => [...sameAsCircles(base), ...sourceCircles(base), ...selfTold(base)],
};

function sameAsCircles(base: Base): Finding[] {
  const naming = new Map(
    [...base.profiles].map(([id, { data }]) => [id, data.sameAs === undefined ? [] : [data.sameAs]]),
  );
  return circlesOf(naming).flatMap((circle) =>
    circular(
      circle,
      (id) => base.profiles.get(id)?.place(['sameAs']),
      circle.length === 1
        ? `“${circle[0]}” is said to be the same as itself.`
        : `These profiles are said to be the same only as one another: ${chain(circle)}.`,
      circle.length === 1
        ? 'Name the other profile, or take sameAs out.'
        : 'Keep sameAs in those that came later, and take it out of the one they go back to.',
    ),
  );
}

function sourceCircles(base: Base): Finding[] {
  return circlesOf(restingOn(base)).flatMap((circle) =>
    circular(
      circle,
      (id, next) => {
        const source = base.sources.get(id);
        return source?.place(['restsOn', source.data.restsOn?.indexOf(next) ?? 0]);
      },
      circle.length === 1
        ? `“${circle[0]}” is said to rest on itself.`
        : `These sources rest on one another and on nothing else: ${chain(circle)}.`,
      'Find out which of them is first-hand, and take restsOn out of that one.',
    ),
  );
}

/** The finding at the first link of a circle, the other links beside it. */
function circular(
  circle: readonly string[],
  placeOf: (id: string, next: string) => Place | undefined,
  message: string,
  help: string,
): Finding[] {
  const [place, ...others] = circle.flatMap(
    (id, index) => placeOf(id, circle[(index + 1) % circle.length] ?? id) ?? [],
  );
  if (!place) return [];
  const related = others.map((other) => ({ place: other, message: 'From here it goes on.' }));
  return [{ rule: 'circular-link', severity: 'error', place, message, help, related }];
}

/** “a → b → a”, the middle of a long circle left out. */
function chain(circle: readonly string[]): string {
  const shown = circle.length > 6 ? [...circle.slice(0, 4), '…', ...circle.slice(-1)] : circle;
  return [...shown, circle[0]].map((id) => (id === '…' ? id : `“${id}”`)).join(' → ');
}

function selfTold(base: Base): Finding[] {
  return [...base.profiles.values()].flatMap((profile) =>
    profile.data.tellApart.flatMap(({ from }, index): Finding[] =>
      from !== profile.id
        ? []
        : [
            {
              rule: 'circular-link',
              severity: 'error',
              place: profile.place(['tellApart', index, 'from']),
              message: `“${profile.id}” is to be told apart from itself.`,
              help: 'Name the profile whose code is taken for this one.',
              related: [],
            },
          ],
    ),
  );
}
