import type { Claim } from '../../../schemas/index.ts';
import type { Answers } from '../../answers.ts';
import { type Entry, type Finding, profileOutputDigest, type RelatedPlace } from '../../base/index.ts';
import { compareClaim } from '../../decide/index.ts';
import {
  type Characteristic,
  formatNumber,
  formatQuantity,
  type ProfileOutput,
  type Unit,
} from '../../measure/index.ts';
import type { Rule } from '../rule.ts';

export const statedVersusComputed: Rule = {
  id: 'stated-versus-computed',
  title: 'No statement contradicts what the readings come to.',
  explanation:
    'A statement from a bulletin, a data sheet or a rider is held against the value computed from the bench readings, at any step, under the main load, supply and signal. They contradict each other when they lie further apart than the tolerance of the statement and the expanded uncertainty of the value together (root of the sum of squares). A statement without a tolerance is taken as rounded: half a unit of its last digit.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'a number copied wrongly',
      file: 'statements/bulletin-loud-profile.yaml',
      good: 'valueVolts: 6.3',
      bad: 'valueVolts: 3.6',
      foundAt: '3.6',
    },
  ],
  check: ({ answers, remember }) =>
    [...answers.base.statements.values()].flatMap((statement) => {
      const profiles = statement.data.claims.map((claim) => profileOutputDigest(answers.base, claim.profile));
      return remember(['stated-versus-computed', statement.file, statement.digest, ...profiles], () =>
        statement.data.claims.flatMap((claim, index) => {
          const output = answers.outputs.get(claim.profile);
          return output ? (contradiction(answers, statement, claim, index, output) ?? []) : [];
        }),
      );
    }),
};

function contradiction(
  answers: Answers,
  statement: Entry<'statements'>,
  claim: Claim,
  index: number,
  output: ProfileOutput,
): Finding | undefined {
  if (claim.trait === 'muted') return mutedContradiction(answers, statement, claim, index, output);
  const { stated, unit, field, computed, comparison } = compareClaim(claim, output);
  if (comparison !== 'differs' || !computed) return undefined;
  return {
    rule: 'stated-versus-computed',
    severity: 'error',
    place: statement.place(['claims', index, field]),
    message: `The statement says ${claim.trait.replaceAll('-', ' ')} ${formatStated(stated, unit)}; the readings of “${claim.profile}” come to ${formatQuantity(computed)}.`,
    help: 'If the number was copied wrongly, correct it; if the source really says so, give the statement a tolerance it allows, or have the profile measured again.',
    related: readingPlaces(answers, computed),
  };
}

function mutedContradiction(
  answers: Answers,
  statement: Entry<'statements'>,
  claim: Extract<Claim, { trait: 'muted' }>,
  index: number,
  output: ProfileOutput,
): Finding | undefined {
  const readings = output.sessions.flatMap(
    (session) =>
      answers.base.readings
        .get(session)
        ?.readingsOf(claim.profile)
        .filter((reading) => reading.channel === claim.channel) ?? [],
  );
  const [first] = readings;
  if (!first || output.mutedChannels.includes(claim.channel) === claim.value) return undefined;
  const table = answers.base.readings.get(first.session);
  const loudest = Math.max(...readings.map((reading) => reading.voltsRms));
  return {
    rule: 'stated-versus-computed',
    severity: 'error',
    place: statement.place(['claims', index, 'value']),
    message: claim.value
      ? `The statement says ${claim.channel} is silent; the readings of “${claim.profile}” go up to ${formatNumber(loudest, 2)} V there.`
      : `The statement says ${claim.channel} plays; the readings of “${claim.profile}” find it silent.`,
    help: 'Correct the statement, or have the profile measured again.',
    related: table ? [{ place: table.place(first.id), message: 'A reading of that output.' }] : [],
  };
}

/** A number as the statement has it, with the unit: “4.1 V”, “28”. */
function formatStated(stated: number, unit: Unit): string {
  const number = formatNumber(stated, String(stated).split('.')[1]?.length ?? 0);
  return unit === 'step' ? number : `${number}\u00a0${unit}`;
}

/** The first reading behind a value in each session it came from. */
function readingPlaces(answers: Answers, computed: Characteristic): RelatedPlace[] {
  const seen = new Set<string>();
  return computed.readings.flatMap((id) => {
    const session = id.slice(0, id.lastIndexOf(':'));
    const table = answers.base.readings.get(session);
    if (seen.has(session) || !table) return [];
    seen.add(session);
    return [{ place: table.place(id), message: `The readings of ${session} begin here.` }];
  });
}
