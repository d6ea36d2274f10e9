import type { Claim } from '../../../schemas/index.ts';
import type { Answers } from '../../answers.ts';
import type { Entry, Finding, RelatedPlace } from '../../base/index.ts';
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
    'A statement from a bulletin, a data sheet or a rider is held against the value computed from the bench readings. They contradict each other when they lie further apart than the tolerance of the statement and the expanded uncertainty of the value together (root of the sum of squares). A statement without a tolerance is taken as rounded: half a unit of its last digit.',
  check: ({ answers }) =>
    [...answers.base.statements.values()].flatMap((statement) =>
      statement.data.claims.flatMap((claim, index) => {
        const output = answers.outputs.get(claim.profile);
        return output ? (contradiction(answers, statement, claim, index, output) ?? []) : [];
      }),
    ),
};

function contradiction(
  answers: Answers,
  statement: Entry<'statements'>,
  claim: Claim,
  index: number,
  output: ProfileOutput,
): Finding | undefined {
  if (claim.trait === 'muted') return mutedContradiction(answers, statement, claim, index, output);
  const computed = output.characteristics.find((one) => one.name === claim.trait);
  if (!computed) return undefined;
  const stated = statedValue(claim);
  const tolerance = stated.tolerance ?? roundingOf(stated.value);
  if (agrees(stated.value, tolerance, computed)) return undefined;
  return {
    rule: 'stated-versus-computed',
    severity: 'error',
    place: statement.place(['claims', index, stated.field]),
    message: `The statement says ${claim.trait.replaceAll('-', ' ')} ${formatNumber(
      stated.value,
      decimalsOf(stated.value),
    )} ${unitWord(computed.unit)}; the readings of “${claim.profile}” come to ${formatQuantity(computed)}.`,
    help: `If the number was copied wrongly, correct it; if the source really says so, give the statement a tolerance it allows, or have the profile measured again.`,
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

interface Stated {
  readonly field: string;
  readonly value: number;
  readonly tolerance: number | undefined;
}

function statedValue(claim: Exclude<Claim, { trait: 'muted' }>): Stated {
  switch (claim.trait) {
    case 'bass-boost':
    case 'rear-to-front':
      return { field: 'valueDb', value: claim.valueDb, tolerance: claim.toleranceDb };
    case 'clean-volts':
      return { field: 'valueVolts', value: claim.valueVolts, tolerance: claim.toleranceVolts };
    case 'highest-clean-step':
      return { field: 'valueStep', value: claim.valueStep, tolerance: claim.toleranceSteps ?? 0 };
    case 'lower-corner':
    case 'upper-corner':
      return { field: 'valueHz', value: claim.valueHz, tolerance: claim.toleranceHz };
  }
}

/** Whether a stated value and a computed one may both be right. */
function agrees(stated: number, tolerance: number, computed: Characteristic): boolean {
  const apart = stated - computed.value;
  const together = Math.hypot(tolerance, computed.expandedUncertainty);
  if (computed.bound === 'at-most' && apart < 0) return true;
  if (computed.bound === 'at-least' && apart > 0) return true;
  return Math.abs(apart) <= together * (1 + 1e-9);
}

function decimalsOf(value: number): number {
  return String(value).split('.')[1]?.length ?? 0;
}

function roundingOf(value: number): number {
  return 0.5 * 10 ** -decimalsOf(value);
}

function unitWord(unit: Unit): string {
  return unit === 'step' ? '(step)' : unit;
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
