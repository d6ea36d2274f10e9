import type { Answers } from '../../answers.ts';
import { type Finding, profileOutputDigest } from '../../base/index.ts';
import { compareOutputs, formatNumber, leastCompared } from '../../measure/index.ts';
import { areDeclaredSame } from '../declared-twins.ts';
import { outputRule } from '../rule.ts';

export const sameOutput = outputRule<Finding[]>({
  id: 'same-output',
  title: 'A profile said to be the same as another puts out the same.',
  explanation:
    'Many profiles sold under names of their own are electrically another profile. Where an entry says so (sameAs), the readings of both are held against each other: level at every clean step, response, rear channels. They contradict the entry when any value differs by more than the uncertainty of the difference, widened for the number of values compared. Profiles that read the same without any entry saying so are reported as news; that does not fail the check.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'a profile said to be the same as a quieter one',
      file: 'profiles/moorlight/rt-5561.yaml',
      good: 'sameAs: moorlight/km-4417',
      bad: 'sameAs: moorlight/kn-2093',
      foundAt: 'moorlight/kn-2093',
    },
  ],
  follows: ({ base }, family) =>
    (base.profilesOfFamily.get(family) ?? []).flatMap(({ digest, data }) => [
      digest,
      // A profile may be said to be the same as one of another family.
      ...(data.sameAs === undefined
        ? []
        : [profileOutputDigest(base, data.sameAs), base.profiles.get(data.sameAs)?.digest ?? '']),
    ]),
  ofFamily: (answers, family) => [...contradicted(answers, family), ...undeclared(answers, family)],
  conclude: (found) => found.flat(),
});

function contradicted(answers: Answers, family: string): Finding[] {
  return (answers.base.profilesOfFamily.get(family) ?? []).flatMap((profile) => {
    const { sameAs } = profile.data;
    const other = sameAs === undefined ? undefined : answers.base.profiles.get(sameAs);
    const [own, its] = [answers.comparable.get(profile.id), other && answers.comparable.get(other.id)];
    if (!other || !own || !its) return [];
    const { compared, apart, where } = compareOutputs(own, its);
    if (compared < leastCompared || apart <= 1) return [];
    const much = Number.isFinite(apart) ? `, ${formatNumber(apart, 1)} times their uncertainty apart` : '';
    return [
      {
        rule: 'same-output',
        severity: 'error',
        place: profile.place(['sameAs']),
        message: `“${profile.id}” does not put out the same as “${other.id}”: they differ most in ${where}${much}.`,
        help: 'Correct or take out sameAs; if both are the same indeed, one of them was measured on another profile.',
        related: [{ place: other.place(['code']), message: 'The other profile.' }],
      },
    ];
  });
}

function undeclared(answers: Answers, family: string): Finding[] {
  return (answers.outputGroups.get(family)?.groups ?? []).flatMap(({ profiles }) => {
    const entries = profiles.flatMap((id) => answers.base.profiles.get(id) ?? []);
    const [first, ...rest] = entries;
    if (!first) return [];
    return rest
      .filter((profile) => !areDeclaredSame(answers.base, first.id, profile.id))
      .map(
        (profile): Finding => ({
          rule: 'same-output',
          severity: 'note',
          place: profile.place(['code']),
          message: `“${profile.id}” puts out the same as “${first.id}”, within the uncertainty of their readings.`,
          help: `If they are one profile under two names, say so: “sameAs: ${first.id}”.`,
          related: [{ place: first.place(['code']), message: 'The other profile.' }],
        }),
      );
  });
}
