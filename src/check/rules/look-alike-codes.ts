import type { Entry, Finding } from '../../base/index.ts';
import { canonicalCode, type Display, foldOnScreen } from '../../codes/index.ts';
import type { Rule } from '../rule.ts';

export const lookAlikeCodes: Rule = {
  id: 'look-alike-codes',
  title: 'Two codes that look alike on their screen come with a hint how to tell them apart.',
  explanation:
    'On a screen of dots or strokes 8 and B, 0 and O, 1 and I are hard to tell apart, on one with smooth characters rn and m as well. Where two codes of a family differ only by such characters, a rider who reads one may land on the other’s page; at least one of the two profiles must then say under tellApart what to look at again. Which characters look alike depends on the display the family names.',
  severity: 'error',
  examples: [
    {
      title: 'a new code that differs by a nought and a letter O only',
      file: 'profiles/moorlight/rt-5561.yaml',
      good: 'code: "RT-5561"',
      bad: 'code: "KN-2O93"',
      foundAt: '"KN-2O93"',
      also: [
        {
          file: 'families/moorlight.md',
          good: "pattern: '^[A-Z]{2}-[0-9]{4}$'",
          bad: "pattern: '^[A-Z]{2}-[0-9A-Z]{4}$'",
        },
      ],
    },
  ],
  check: ({ answers: { base } }) =>
    [...base.families.values()].flatMap((family) =>
      familyFindings(family.data.face.screen.display, base.profilesOfFamily.get(family.id) ?? []),
    ),
};

function familyFindings(display: Display, profiles: readonly Entry<'profiles'>[]): Finding[] {
  const alike = new Map<string, Map<string, Entry<'profiles'>>>();
  for (const profile of profiles) {
    const key = foldOnScreen(profile.data.code, display);
    // Codes that are the same but for how they are typed are duplicates, and named as such.
    const canonical = canonicalCode(profile.data.code);
    const group = alike.get(key) ?? new Map<string, Entry<'profiles'>>();
    if (!group.has(canonical)) group.set(canonical, profile);
    alike.set(key, group);
  }
  return [...alike.values()]
    .filter((group) => group.size > 1)
    .flatMap((group) => groupFindings(display, [...group.values()]));
}

/** One finding for each profile that has no hint to or from one before it: hints are followed, not pairs. */
function groupFindings(display: Display, group: readonly Entry<'profiles'>[]): Finding[] {
  const place = new Map(group.map((profile, index) => [profile.id, index]));
  const told = group.map(() => new Set<number>());
  group.forEach((profile, index) => {
    for (const { from } of profile.data.tellApart) {
      const other = place.get(from);
      if (other === undefined) continue;
      told[index]?.add(other);
      told[other]?.add(index);
    }
  });
  return group.flatMap((profile, index) => {
    const without = group.findIndex((_, other) => other >= index || !told[index]?.has(other));
    const other = without < index ? group[without] : undefined;
    return other ? [untold(display, profile, other)] : [];
  });
}

function untold(display: Display, profile: Entry<'profiles'>, other: Entry<'profiles'>): Finding {
  return {
    rule: 'look-alike-codes',
    severity: 'error',
    place: profile.place(['code']),
    message: `“${profile.data.code}” and “${other.data.code}” look alike on ${screens[display]}, and neither profile says how to tell them apart.`,
    help: `Add tellApart with “from: ${other.id}” and a hint what to look at again${whereTheyDiffer(profile.data.code, other.data.code)}; or correct the code.`,
    related: [{ place: other.place(['code']), message: 'The other code stands here.' }],
  };
}

const screens: Readonly<Record<Display, string>> = {
  'dot-matrix': 'a dot-matrix screen',
  'seven-segment': 'a seven-segment display',
  'anti-aliased': 'a screen with smooth characters',
};

/** “ (character 3: 8 here, B there)”; nothing where they differ in length. */
function whereTheyDiffer(code: string, other: string): string {
  const here = Array.from(code);
  const there = Array.from(other);
  if (here.length !== there.length) return '';
  const at = here.findIndex((character, index) => character !== there[index]);
  return ` (character ${at + 1} is ${here[at] ?? ''} here and ${there[at] ?? ''} there)`;
}
