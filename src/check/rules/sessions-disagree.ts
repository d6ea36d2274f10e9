import type { Answers } from '../../answers.ts';
import type { Finding } from '../../base/index.ts';
import { readingsOfProfile, setAsideFor } from '../../base/index.ts';
import {
  agreeingOf,
  areAlike,
  type CommonPoint,
  commonPoints,
  formatHz,
  formatNumber,
  formatQuantity,
  likelierAtFault,
  normalisedErrorLimit,
  type Point,
  pointsOf,
  pointVolts,
  sharedOffset,
} from '../../measure/index.ts';
import { outputRule, type RuleFinding } from '../rule.ts';

export const sessionsDisagree = outputRule<PairAgreement[]>({
  id: 'sessions-disagree',
  title: 'Sessions that measured the same thing under like conditions agree within their uncertainties.',
  explanation:
    'Readings of one profile, channel, step and frequency from two sessions with like load, supply and signal are compared by E_n, their difference over the root sum of squares of their expanded uncertainties (ISO 13528); more than 1 disagrees. Where many readings are compared the limit is widened, so that all together keep the 5 % chance of a false alarm that a single comparison has. The sessions are compared as wholes too, which shows a scale that is off. Only the clean region counts: above it the output hangs on the supply.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'two figures swapped',
      file: 'outputs/2025-05-shed/readings.csv',
      good: 'FL,16,1000,1.5841',
      bad: 'FL,16,1000,1.8541',
      foundAt: '1.8541',
    },
  ],
  follows: () => [],
  ofFamily: (answers, family) => comparedPairs(answers, family).map((pair) => agreementOf(answers, pair)),
  conclude: (found) => {
    const pairs = found.flat();
    const limit = normalisedErrorLimit(pairs.reduce((sum, pair) => sum + pair.compared, 0));
    const offsetLimit = normalisedErrorLimit(pairs.length);
    const findings = pairs.flatMap(({ compared, errors, worst, offset }): RuleFinding[] => {
      const apart = errors.filter(({ error }) => error > limit);
      if (worst && apart.length > 0) {
        const { finding, message } = worst;
        const count = apart.length === 1 ? 'the only one' : `the widest of ${apart.length}`;
        return [
          {
            ...finding,
            message: `${message}, ${count} of ${compared} compared that disagrees).`,
            claims: apart.flatMap(({ readings }) => readings),
          },
        ];
      }
      return offset && offset.error > offsetLimit ? [offset.finding] : [];
    });
    return oneForEachPlace(findings);
  },
});

/** How two sessions agree about one profile; the limits are known only when all are. */
interface PairAgreement {
  readonly compared: number;
  /** The |E_n| above 1, and the readings of the session at fault behind each. */
  readonly errors: readonly { readonly error: number; readonly readings: readonly string[] }[];
  /** The reading with the greatest of them, and the beginning of what is said of it. */
  readonly worst?: { readonly finding: Finding; readonly message: string };
  /** The difference of the sessions as wholes. */
  readonly offset?: { readonly error: number; readonly finding: Finding };
}

function agreementOf(answers: Answers, pair: Pair): PairAgreement {
  const apart = pair.common.filter((one) => Math.abs(one.normalisedError) > 1);
  const worst = apart.reduce<CommonPoint | undefined>(
    (most, one) => (most && Math.abs(most.normalisedError) >= Math.abs(one.normalisedError) ? most : one),
    undefined,
  );
  const disagreement = worst && readingFinding(answers, pair, worst);
  const offset = sharedOffset(pair.common);
  const isOff = offset && Math.abs(offset.normalisedError) > 1;
  return {
    compared: pair.common.length,
    errors: apart.map(({ normalisedError, a, b }) => ({
      error: Math.abs(normalisedError),
      readings: (disagreement?.aAtFault ? a : b).readings,
    })),
    ...(disagreement && { worst: disagreement }),
    ...(isOff && {
      offset: {
        error: Math.abs(offset.normalisedError),
        finding: offsetFinding(answers, pair, offset),
      },
    }),
  };
}

/** A reading that several sessions contradict is one finding, with each of them beside it. */
function oneForEachPlace(findings: readonly RuleFinding[]): RuleFinding[] {
  const byPlace = new Map<string, RuleFinding>();
  for (const finding of findings) {
    const { file, line, column } = finding.place;
    const key = `${file}:${line}:${column}`;
    const first = byPlace.get(key);
    byPlace.set(
      key,
      first
        ? {
            ...first,
            related: [...first.related, ...finding.related],
            claims: [...(first.claims ?? []), ...(finding.claims ?? [])],
          }
        : finding,
    );
  }
  return [...byPlace.values()];
}

/** Two sessions that measured one profile under like conditions; `a` is the older. */
interface Pair {
  readonly profile: string;
  readonly a: readonly Point[];
  readonly b: readonly Point[];
  readonly common: readonly CommonPoint[];
  /** The points of every session under like conditions, these two among them. */
  readonly alike: readonly (readonly Point[])[];
}

function comparedPairs(answers: Answers, family: string): Pair[] {
  const pairs: Pair[] = [];
  for (const { id: profile } of answers.base.profilesOfFamily.get(family) ?? []) {
    if (readingsCount(answers, profile) < 2) continue;
    const output = answers.outputs.get(profile);
    if (!output) continue;
    const step = output.characteristics.find((one) => one.name === 'highest-clean-step');
    const volts = output.characteristics.find((one) => one.name === 'clean-volts');
    if (!step || !volts) continue;
    // One step of safety where the clean step itself is not certain; no more, or a reading that is far off,
    // which makes it quite uncertain, would hide itself.
    const clean = { step: step.value - Math.min(1, step.expandedUncertainty), volts: volts.value };
    const measured = readingsOfProfile(answers.base, profile).map(({ session, readings }) => ({
      conditions: session.data,
      points: pointsOf({ session: session.id, conditions: session.data, readings }),
    }));
    measured.forEach((a, index) => {
      for (const b of measured.slice(index + 1)) {
        if (!areAlike(a.conditions, b.conditions)) continue;
        const common = commonPoints(a.points, b.points, clean);
        if (common.length === 0) continue;
        const alike = measured.filter((one) => areAlike(one.conditions, a.conditions));
        pairs.push({ profile, a: a.points, b: b.points, common, alike: alike.map(({ points }) => points) });
      }
    });
  }
  return pairs;
}

/** How many sessions measured a profile and count. */
function readingsCount({ base }: Answers, profile: string): number {
  const sessions = base.sessionsOfProfile.get(profile) ?? [];
  return sessions.filter((session) => !setAsideFor(session, profile)).length;
}

function readingFinding(
  answers: Answers,
  pair: Pair,
  worst: CommonPoint,
): { finding: Finding; message: string; aAtFault: boolean } {
  // Without a majority or a sign which one stands out, the newer has to show why it differs.
  const majority = majorityAt(pair, worst);
  const outvoted = majority && majority.includes(worst.b.session) !== majority.includes(worst.a.session);
  const aAtFault = outvoted
    ? majority.includes(worst.b.session)
    : likelierAtFault(worst, pair.a, pair.b) === 'a';
  const [here, there] = aAtFault ? [worst.a, worst.b] : [worst.b, worst.a];
  const [hereVolts, thereVolts] = aAtFault ? [worst.aVolts, worst.bVolts] : [worst.bVolts, worst.aVolts];
  const [hereReading = '', thereReading = ''] = [
    farthest(answers, pair.profile, here, there),
    there.readings[0],
  ];
  const hereTable = answers.base.readings.get(here.session);
  const thereTable = answers.base.readings.get(there.session);
  if (!hereTable || !thereTable)
    throw new Error(`no readings of session ${here.session} or ${there.session}`);
  const point = `${here.channel}, step ${here.step}, ${formatHz(here.hz)}`;
  const message = `“${pair.profile}”, ${point}: ${formatQuantity(hereVolts)} here, ${formatQuantity(thereVolts)} in ${there.session} (E_n ${formatNumber(
    Math.abs(worst.normalisedError),
    1,
  )}`;
  const finding: Finding = {
    rule: 'sessions-disagree',
    severity: 'error',
    place: hereTable.place(hereReading, 'voltsRms'),
    message,
    help: `${outvoted && majority.length > 1 ? `${majority.join(' and ')} agree with each other. ` : ''}Compare both sheets with their originals: a slipped digit, a swapped row or another profile set on the unit is likeliest. If both are right, the conditions in session.yaml are not what they say.`,
    related: [
      { place: thereTable.place(thereReading, 'voltsRms'), message: 'The other session reads this.' },
    ],
  };
  return { finding, message, aAtFault };
}

/**
 * Where three or more sessions under like conditions read the point, those that agree: the largest
 * consistent subset (Cox 2007), if it is more than half of them.
 */
function majorityAt({ alike }: Pair, { a }: CommonPoint): string[] | undefined {
  const read = alike.flatMap(
    (points) =>
      points.find((one) => one.channel === a.channel && one.step === a.step && one.hz === a.hz) ?? [],
  );
  if (read.length < 3) return undefined;
  const agreeing = agreeingOf(read.map(pointVolts)).flatMap((index) => read[index]?.session ?? []);
  return agreeing.length * 2 > read.length && agreeing.length < read.length ? agreeing : undefined;
}

/** Of the repeats behind a point, the one farthest from what the other session reads. */
function farthest(answers: Answers, profile: string, here: Point, there: Point): string | undefined {
  const table = answers.base.readings.get(here.session);
  const behind = new Set(here.readings);
  const off = ({ voltsRms }: { voltsRms: number }) => Math.abs(voltsRms - there.voltsRms);
  return (table?.readingsOf(profile) ?? [])
    .filter((one) => behind.has(one.id))
    .sort((x, y) => off(y) - off(x))[0]?.id;
}

function offsetFinding(
  answers: Answers,
  pair: Pair,
  offset: { differenceDb: number; normalisedError: number },
): Finding {
  const [aId = '', bId = ''] = [pair.a[0]?.session, pair.b[0]?.session];
  const a = answers.base.outputs.get(aId);
  const b = answers.base.outputs.get(bId);
  if (!a || !b) throw new Error(`no session ${aId} or ${bId}`);
  return {
    rule: 'sessions-disagree',
    severity: 'error',
    place: b.place(['instrument'], 'key'),
    message: `All ${pair.common.length} common readings of “${pair.profile}” lie ${formatNumber(
      Math.abs(offset.differenceDb),
      2,
    )} dB ${offset.differenceDb < 0 ? 'above' : 'below'} those of ${aId} (E_n ${formatNumber(Math.abs(offset.normalisedError), 1)}).`,
    help: 'The scale of one voltmeter or the level of one test signal is off by more than its specification: check the calibration and the values in session.yaml.',
    related: [{ place: a.place(['instrument'], 'key'), message: 'The other session’s instrument.' }],
  };
}
