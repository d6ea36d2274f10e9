import type { Entry, Finding } from '../../base/index.ts';
import { type CodePattern, canonicalCode, codePattern } from '../../codes/index.ts';
import type { Rule } from '../rule.ts';

export const codePatternRule: Rule = {
  id: 'code-pattern',
  title: 'Every code fits the pattern of its family.',
  explanation:
    'A family says in code.pattern, a regular expression (ECMA-262), what its codes look like; a code that does not fit has a character too many or too few, or belongs to another family. Other spellings need not fit, but must be the code in other clothes: with characters left out or added, none exchanged. The pattern itself must be one that can be read and tested in no time: repetitions inside repetitions, such as (A+)+, are refused, because one code could keep the check busy for years.',
  severity: 'error',
  examples: [
    {
      title: 'a character too few',
      file: 'profiles/moorlight/km-4417.yaml',
      good: 'code: "KM-4417"',
      bad: 'code: "KM-441"',
      foundAt: '"KM-441"',
    },
    {
      title: 'another spelling that is another code',
      file: 'profiles/moorlight/km-4417.yaml',
      good: 'code: "KM-4417"\n',
      bad: 'code: "KM-4417"\notherSpellings: ["KM4471 B"]\n',
      foundAt: '"KM4471 B"',
    },
    {
      title: 'a bracket that is not closed in a pattern',
      file: 'families/moorlight.md',
      good: "pattern: '^[A-Z]{2}-[0-9]{4}$'",
      bad: "pattern: '^[A-Z{2}-[0-9{4}$'",
      foundAt: "'^[A-Z{2}",
    },
    {
      title: 'a repetition inside a repetition',
      file: 'families/moorlight.md',
      good: "pattern: '^[A-Z]{2}-[0-9]{4}$'",
      bad: "pattern: '^([A-Z]+)+-([0-9]+)*$'",
      foundAt: "'^([A-Z]+)+",
    },
    {
      title: 'a pattern that fits no code of its family',
      file: 'families/moorlight.md',
      good: "pattern: '^[A-Z]{2}-[0-9]{4}$'",
      bad: "pattern: '^[A-Z]{2}-[0-9]{3}$'",
      foundAt: "'^[A-Z]{2}-[0-9]{3}$'",
    },
  ],
  check: ({ answers: { base } }) =>
    [...base.families.values()].flatMap((family) =>
      familyFindings(family, base.profilesOfFamily.get(family.id) ?? []),
    ),
};

function familyFindings(family: Entry<'families'>, profiles: readonly Entry<'profiles'>[]): Finding[] {
  const pattern = codePattern(family.data.code.pattern);
  if (pattern.kind !== 'ready') return [unusable(family, pattern)];
  const firstUse = firstUseOfCodes(profiles);
  // A code that is another profile's is named as a duplicate; that it looks odd as well is the echo.
  const isOwn = (code: string, profile: Entry<'profiles'>): boolean =>
    firstUse.get(canonicalCode(code)) === profile.id;
  const misfits = new Set(profiles.filter((profile) => !pattern.matches(profile.data.code)));
  const [first] = misfits;
  // Where none fits, one pattern is likelier wrong than every code.
  if (first && profiles.length > 1 && misfits.size === profiles.length) {
    return [fitsNone(family, first, profiles.length)];
  }
  return profiles.flatMap((profile) => {
    if (misfits.has(profile)) return isOwn(profile.data.code, profile) ? [misfit(family, profile)] : [];
    return spellingFindings(profile, (spelling) => pattern.matches(spelling) || !isOwn(spelling, profile));
  });
}

/** The first profile that has each code or other spelling. */
function firstUseOfCodes(profiles: readonly Entry<'profiles'>[]): Map<string, string> {
  const firstUse = new Map<string, string>();
  for (const { id, data } of profiles) {
    for (const written of [data.code, ...data.otherSpellings]) {
      const canonical = canonicalCode(written);
      if (!firstUse.has(canonical)) firstUse.set(canonical, id);
    }
  }
  return firstUse;
}

function fitsNone(family: Entry<'families'>, first: Entry<'profiles'>, count: number): Finding {
  return {
    rule: 'code-pattern',
    severity: 'error',
    place: family.place(['code', 'pattern']),
    message: `None of the ${count} codes of “${family.data.name}” fits this pattern, such as “${first.data.code}”.`,
    help: 'Correct the pattern so that it describes the codes as the screen shows them.',
    related: [{ place: first.place(['code']), message: 'This code does not fit.' }],
  };
}

function misfit(family: Entry<'families'>, profile: Entry<'profiles'>): Finding {
  const { code } = profile.data;
  const around = /^[“”„"'‘’‹›«»\s]|[“”"'‘’‹›«»\s]$/u.test(code);
  return {
    rule: 'code-pattern',
    severity: 'error',
    place: profile.place(['code']),
    message: `The code “${code}” does not look like a code of “${family.data.name}”.`,
    help: around
      ? 'Put it in straight quotes ("), which are not part of the code, and nothing else round it.'
      : `Compare it with the screen; codes of this family are described as: ${family.data.code.where}`,
    related: [
      { place: family.place(['code', 'pattern']), message: 'This pattern says what its codes look like.' },
    ],
  };
}

function spellingFindings(profile: Entry<'profiles'>, isExcused: (spelling: string) => boolean): Finding[] {
  const { code, otherSpellings } = profile.data;
  const canonical = canonicalCode(code);
  return otherSpellings.flatMap((spelling, index): Finding[] => {
    const other = canonicalCode(spelling);
    if (isExcused(spelling) || isPartOf(other, canonical) || isPartOf(canonical, other)) return [];
    return [
      {
        rule: 'code-pattern',
        severity: 'error',
        place: profile.place(['otherSpellings', index]),
        message: `“${spelling}” is neither the code “${code}” written another way nor a code of this family.`,
        help: 'Correct it, or take it out; a name the profile is sold under belongs in soldAs.',
        related: [{ place: profile.place(['code']), message: 'The code stands here.' }],
      },
    ];
  });
}

/** Whether `part` is left of `whole` when characters are taken out of it, two at least being left. */
function isPartOf(part: string, whole: string): boolean {
  if (part.length < 2) return false;
  let at = 0;
  for (const character of part) {
    at = whole.indexOf(character, at) + 1;
    if (at === 0) return false;
  }
  return true;
}

function unusable(family: Entry<'families'>, pattern: Exclude<CodePattern, { kind: 'ready' }>): Finding {
  const [message, help] = {
    invalid: (): [string, string] => [
      `This pattern is no regular expression${pattern.kind === 'invalid' && pattern.reason ? ` (${pattern.reason})` : ''}.`,
      'Look for a bracket that is not closed, or a sign such as ( or + that needs a backslash before it.',
    ],
    'too-long': (): [string, string] => [
      'This pattern is too long to describe one code.',
      'Describe the kind of each character, such as [0-9]{4}, instead of listing codes.',
    ],
    'too-costly': (): [string, string] => [
      'This pattern can be laid over one code in too many ways to be tested.',
      'Take out repetitions inside repetitions: [A-Z]+ instead of ([A-Z]+)+, [0-9A-Z]+ instead of ([0-9]|[A-Z])+.',
    ],
  }[pattern.kind]();
  return {
    rule: 'code-pattern',
    severity: 'error',
    place: family.place(['code', 'pattern']),
    message,
    help,
    related: [],
  };
}
