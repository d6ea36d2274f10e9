import type { Answers } from '../../answers.ts';
import { type BenchReading, familyOutputsDigest, type RelatedPlace } from '../../base/index.ts';
import { formatHz } from '../../measure/index.ts';
import type { Slip } from '../readings/slip.ts';
import { isWhole, mayHaveSlips, slipsOf } from '../readings/slips.ts';
import type { ThdSlip } from '../readings/slips-of-thd.ts';
import type { Rule, RuleFinding } from '../rule.ts';

export const unitSlip: Rule = {
  id: 'unit-slip',
  title: 'Volts are written as volts rms, and distortion as per cent.',
  explanation:
    'A meter set to peak, a column in millivolts, decibels copied for volts: each puts a reading, a run of rows or a whole sheet off by a factor that gives the slip away: 1000, √2, 2√2, or 20·lg of the volts. Readings are held against other sessions of the same profile under like conditions, against the steps, frequencies and outputs beside them, and against what the output can give. Where one of these factors explains the difference, the finding names it, points at the first such row and says how many there are; what else would follow from the slip is not reported again.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'millivolts written for volts',
      file: 'outputs/2026-02-loft/readings.csv',
      good: 'rt-5561,FL,14,1000,1.1184',
      bad: 'rt-5561,FL,14,1000,1118.4',
      foundAt: '1118.4',
    },
    {
      title: 'peak volts written for rms',
      file: 'outputs/2025-05-shed/readings.csv',
      good: 'km-4417,FL,16,1000,1.5841',
      bad: 'km-4417,FL,16,1000,2.2403',
      foundAt: '2.2403',
    },
    {
      title: 'decibels over 1 V written for volts',
      file: 'outputs/2025-05-shed/readings.csv',
      good: 'km-4417,FL,23,1000,5.3070',
      bad: 'km-4417,FL,23,1000,14.4970',
      foundAt: '14.4970',
    },
    {
      title: 'a ratio written for per cent',
      file: 'outputs/2025-05-shed/readings.csv',
      good: 'kn-2093,FL,18,1000,0.3737,0.080',
      bad: 'kn-2093,FL,18,1000,0.3737,0.0008',
      foundAt: '0.0008',
    },
  ],
  lookAt: ({ answers, remember }, family) => {
    const inputs = ['unit-slip', family, familyOutputsDigest(answers.base, family)];
    const families = suspected.get(answers) ?? new Set<string>();
    suspected.set(answers, families);
    if (remember(inputs, () => mayHaveSlips(answers.base, family))) families.add(family);
  },
  check: ({ answers }) => {
    const { volts, thd } = slipsOf(answers.base, suspected.get(answers) ?? new Set());
    return [
      ...oneForEachSession(volts).map((slips) => voltsFinding(answers, slips)),
      ...thd.map((slip) => thdFinding(answers, slip)),
    ];
  },
};

/** The families a slip is looked for in: those of the others were clean, now or in an earlier run. */
const suspected = new WeakMap<Answers, Set<string>>();

/** Slips that are one: a slip in several profiles of a sheet, many rows of one of them, is that of the whole sheet. */
function oneForEachSession(slips: readonly Slip[]): Slip[][] {
  const groups = new Map<string, Slip[]>();
  for (const slip of slips) {
    const key = `${slip.sheet.session.id} ${slip.kind.id}`;
    const known = groups.get(key);
    if (known) known.push(slip);
    else groups.set(key, [slip]);
  }
  return [...groups.values()].flatMap((group) =>
    group.some(({ readings }) => readings.length >= leastOfSession) ? [group] : group.map((slip) => [slip]),
  );
}

/** Fewer rows of a profile are a slip of their own. */
const leastOfSession = 4;

function voltsFinding(answers: Answers, slips: readonly Slip[]): RuleFinding {
  const [slip] = [...slips].sort((a, b) => firstLine(a) - firstLine(b));
  if (!slip) throw new Error('no slip to tell of');
  const { sheet, kind, against, witness } = slip;
  const [first] = inOrder(slip.readings);
  const table = answers.base.readings.get(sheet.session.id);
  if (!first || !table) throw new Error(`no readings of session ${sheet.session.id}`);
  const rows = slips.reduce((sum, one) => sum + one.readings.length, 0);
  const names = new Set(slips.map((one) => one.sheet.profile));
  const profiles = names.size === 1 ? '' : ` of ${names.size} profiles`;
  const relation =
    kind.factor === undefined
      ? `${first.voltsRms} is 20·lg of ${against}`
      : `${first.voltsRms} V is ${formatFactor(kind.factor)} ${against}`;
  return {
    rule: 'unit-slip',
    severity: 'error',
    place: table.place(first.id, 'voltsRms'),
    message: `“${first.profile}”, ${first.channel}, step ${first.step}, ${formatHz(first.hz)}: ${relation}: ${kind.cause}? ${countOf(rows, profiles)}`,
    help: `If so: ${kind.remedy} If not, compare the sheet with its original and the conditions in session.yaml.`,
    related: witnessPlace(answers, witness),
    claims: slips.flatMap((one) =>
      (isWhole(one) || slips.length > 1
        ? one.sheet.cells.flatMap((cell) => cell.readings)
        : one.readings
      ).map(({ id }) => id),
    ),
  };
}

function thdFinding(answers: Answers, { sheet, readings, against, witness }: ThdSlip): RuleFinding {
  const [first] = inOrder(readings);
  const table = answers.base.readings.get(sheet.session.id);
  if (!first || !table) throw new Error(`no readings of session ${sheet.session.id}`);
  const relation = against.startsWith('what the analyser')
    ? `below ${against}, and a hundred times it is not`
    : `a hundredth of ${against}`;
  return {
    rule: 'unit-slip',
    severity: 'error',
    place: table.place(first.id, 'thdPercent'),
    message: `“${first.profile}”, ${first.channel}, step ${first.step}, ${formatHz(first.hz)}: THD of ${first.thdPercent} % is ${relation}: a ratio written for per cent? ${countOf(readings.length, '')}`,
    help: 'If so: multiply by 100. If not, compare the sheet with its original.',
    related: witnessPlace(answers, witness),
    claims: readings.map(({ id }) => id),
  };
}

function countOf(rows: number, profiles: string): string {
  return rows === 1 ? 'It is the only such row.' : `It is the first of ${rows} such rows${profiles}.`;
}

/** A factor in words to stand before what it multiplies: “1.414 times”, “a thousandth of”. */
function formatFactor(factor: number): string {
  if (factor === 1000) return '1000 times';
  if (factor === 1 / 1000) return 'a thousandth of';
  return `${factor.toFixed(3)} times`;
}

function inOrder(readings: readonly BenchReading[]): BenchReading[] {
  return [...readings].sort((a, b) => lineOf(a) - lineOf(b));
}

function firstLine(slip: Slip): number {
  const [first] = inOrder(slip.readings);
  return first ? lineOf(first) : 0;
}

function lineOf({ id }: BenchReading): number {
  return Number(id.slice(id.lastIndexOf(':') + 1));
}

function witnessPlace(answers: Answers, witness: BenchReading | undefined): RelatedPlace[] {
  const table = witness && answers.base.readings.get(witness.session);
  return table ? [{ place: table.place(witness.id, 'voltsRms'), message: 'It was held against this.' }] : [];
}
