import type { Answers } from '../../answers.ts';
import { type Base, familyOutputsDigest, readingsOfProfile, setAsideFor } from '../../base/index.ts';
import { areDeclaredSame } from '../declared-twins.ts';
import type { Rows } from '../readings/copied-blocks.ts';
import { type Copies, type Copy, copiesIn, mostExpected } from '../readings/copies.ts';
import type { CopySign } from '../readings/copy-or-original.ts';
import type { Rule, RuleFinding } from '../rule.ts';

export const copiedBlock: Rule = {
  id: 'copied-block',
  title: 'No two profiles have a block of rows that read the same to the last digit.',
  explanation:
    'A block pasted under the wrong profile reads like any other: steps rise, frequencies are smooth. But the last digits of independent readings differ, even of profiles that put out the same. Blocks of four or more rows that another profile has too, digit by digit, are held against chance: how often two readings agree to the last digit follows from the resolution of the meter and the scatter of the session’s repeats, and how often it may happen from the number of rows compared. Fewer than one block in a million bases may be a false alarm. Other sessions, and the rows beside the block, show which of the two is the copy. Profiles that sameAs says are one may share their readings.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'eight rows of another profile pasted',
      file: 'outputs/2025-05-shed/readings.csv',
      good: [
        'kn-2093,FL,17,1000,0.3146,0.080,1',
        'moorlight/kn-2093,FL,18,1000,0.3737,0.080,1',
        'moorlight/kn-2093,FL,19,1000,0.4439,0.080,1',
        'moorlight/kn-2093,FL,20,1000,0.5278,0.080,1',
        'moorlight/kn-2093,FL,21,1000,0.6276,0.080,1',
        'moorlight/kn-2093,FL,22,1000,0.7452,0.080,1',
        'moorlight/kn-2093,FL,23,1000,0.8862,0.080,1',
        'moorlight/kn-2093,FL,24,1000,1.0529,0.080,1',
      ].join('\n'),
      bad: [
        'kn-2093,FL,17,1000,1.8825,0.080,1',
        'moorlight/kn-2093,FL,18,1000,2.2393,0.080,1',
        'moorlight/kn-2093,FL,19,1000,2.6590,0.080,1',
        'moorlight/kn-2093,FL,20,1000,3.1598,0.080,1',
        'moorlight/kn-2093,FL,21,1000,3.7575,0.080,1',
        'moorlight/kn-2093,FL,22,1000,4.4640,0.080,1',
        'moorlight/kn-2093,FL,23,1000,5.3070,0.080,1',
        'moorlight/kn-2093,FL,24,1000,6.3041,0.080,1',
      ].join('\n'),
      foundAt: '1.8825',
    },
  ],
  lookAt: ({ answers, remember }, family) => {
    const { base } = answers;
    const inputs = ['copied-block', family, familyOutputsDigest(base, family)];
    const of = found.get(answers) ?? [];
    of.push(remember(inputs, () => copiesIn(base, rowsOfFamily(base, family), () => true)));
    found.set(answers, of);
  },
  check: ({ answers, remember }) => {
    const all = [...(found.get(answers) ?? []), ...acrossFamilies(answers, remember)];
    const compared = all.reduce((sum, one) => sum + one.compared, 0);
    return all
      .flatMap(({ copies }) => copies)
      .filter(
        ({ copy, original, chance }) =>
          chance * compared < mostExpected && !areDeclaredSame(answers.base, copy.profile, original.profile),
      )
      .map((one) => copyFinding(answers.base, one));
  },
};

/** What was found out about each family's sheets. */
const found = new WeakMap<Answers, Copies[]>();

function rowsOfFamily(base: Base, family: string): Rows[] {
  return (base.profilesOfFamily.get(family) ?? []).flatMap(({ id: profile }) =>
    readingsOfProfile(base, profile).map((one) => ({ profile, ...one })),
  );
}

/** Profiles of different families are compared where one session measured both. */
function acrossFamilies({ base }: Answers, remember: Parameters<Rule['check']>[0]['remember']): Copies[] {
  const familyOf = (profile: string): string => base.profiles.get(profile)?.data.family ?? '';
  return [...base.readings.values()].flatMap((table): Copies[] => {
    const session = base.outputs.get(table.session);
    const families = [...new Set(table.profiles.map(familyOf))];
    if (!session || families.length < 2) return [];
    const counted = table.profiles.filter((profile) => !setAsideFor(session, profile));
    const inputs = families.flatMap((family) => [family, familyOutputsDigest(base, family)]);
    return [
      remember(['copied-block across', session.id, ...inputs], () =>
        copiesIn(
          base,
          counted.map((profile) => ({ profile, session, readings: table.readingsOf(profile) })),
          (a, b) => familyOf(a.profile) !== familyOf(b.profile),
        ),
      ),
    ];
  });
}

const signs: Readonly<Record<CopySign, string>> = {
  sessions: 'other sessions bear the other profile out',
  neighbours: 'the rows beside them fit the other profile better',
  order: 'which of the two is the copy does not show',
};

function copyFinding(base: Base, { copy, original, sign, rows, source, at, telling }: Copy): RuleFinding {
  const table = base.readings.get(copy.session);
  const other = base.readings.get(original.session);
  const [first = ''] = rows;
  if (!table || !other) throw new Error(`no readings of session ${copy.session} or ${original.session}`);
  const where = copy.session === original.session ? '' : ` in ${original.session}`;
  return {
    rule: 'copied-block',
    severity: 'error',
    place: table.place(first, 'voltsRms'),
    message: `“${copy.profile}”, from ${at} on: ${rows.length} rows, ${telling} of them of three digits or more, read to the last digit what “${original.profile}” reads${where}: pasted from there? ${signs[sign].replace(/^./, (letter) => letter.toUpperCase())}.`,
    help: 'Compare the rows of both profiles with the original sheet; if those of this one are lost, take them out or read them again. If both are one profile under two names, say so with sameAs.',
    related: [{ place: other.place(source, 'voltsRms'), message: 'The same rows begin here.' }],
    claims: rows,
  };
}
