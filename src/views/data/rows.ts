/** The rows of the published data, in the order of the columns of their schemas. */
import type { Answers } from '../../answers.ts';
import { setAsideFor } from '../../base/index.ts';
import type { Characteristic, ProfileOutput } from '../../measure/index.ts';
import { valueAnchorOf } from '../value-anchors.ts';
import type { Cell } from './csv-text.ts';
import type { tableSchemas } from './table-schemas.ts';

type Rows = Iterable<readonly Cell[]>;

/** What makes the rows of each table but the readings. */
export const rowsOf: Readonly<
  Record<Exclude<keyof typeof tableSchemas, 'readings'>, (answers: Answers) => Rows>
> = {
  units: ({ base }) =>
    [...base.families.values()].map(({ id, data: { name, maker, output, volume } }) => [
      id,
      name,
      maker,
      output.channels.join(' '),
      output.topology,
      output.ratedLoadOhms,
      volume.lowestStep,
      volume.highestStep,
    ]),
  profiles: (answers) =>
    profilesOf(answers).map(({ id, data }) => [
      id,
      data.family,
      data.code,
      data.origin,
      data.system,
      data.sources.join(' '),
    ]),
  characteristics: characteristicRows,
  answers: (answers) =>
    profilesOf(answers).flatMap(({ id }) =>
      (answers.planAnswers.get(id) ?? []).map(({ plan, verdict, sentence }) => [id, plan, verdict, sentence]),
    ),
  sessions: ({ base }) =>
    [...base.outputs.values()].map(({ id, data }) => [
      id,
      data.date,
      data.source,
      data.bench,
      data.takenBy,
      data.instrument.name,
      data.instrument.resolutionVolts,
      data.signal.kind,
      data.load.ohms,
      data.supply.volts,
      data.signal.levelDbfs,
      data.signal.levelToleranceDb,
      data.load.tolerancePercent,
      data.supply.toleranceVolts,
      data.method,
    ]),
  sources: ({ base }) =>
    [...base.sources.values()].map(({ id, data }) => [
      id,
      data.kind,
      data.title,
      data.date,
      data.keptAt,
      data.trust,
      data.trustReason,
    ]),
};

/** The readings of one session in the order of its sheet, those set aside marked so. */
export function* readingRowsOf({ base }: Answers, session: string): Rows {
  const [entry, table] = [base.outputs.get(session), base.readings.get(session)];
  if (!entry || !table) return;
  const counting = new Map(table.profiles.map((profile) => [profile, !setAsideFor(entry, profile)]));
  for (let row = 0; row < table.length; row += 1) {
    const { id, profile, channel, step, hz, voltsRms, thdPercent, repeat } = table.reading(row);
    const counts = counting.get(profile) ?? false;
    yield [id, session, profile, channel, step, hz, voltsRms, thdPercent, repeat, counts];
  }
}

/** The profiles whose family is known: all others have no output. */
function profilesOf({ base }: Answers) {
  return [...base.profiles.values()].filter(({ data }) => base.families.has(data.family));
}

function* characteristicRows(answers: Answers): Rows {
  for (const { id } of profilesOf(answers)) {
    const output = answers.outputs.get(id);
    if (!output) continue;
    const isHeadline = new Set(output.characteristics);
    for (const one of [...output.characteristics, ...output.others]) {
      yield characteristicRow(output, one, isHeadline.has(one));
    }
  }
}

function characteristicRow(output: ProfileOutput, one: Characteristic, isHeadline: boolean): Cell[] {
  const { channel, step, hz, loadOhms, supplyVolts, signalDbfs } = one.conditions;
  return [
    `${output.profile}#${valueAnchorOf(output, one)}`,
    output.profile,
    one.name,
    isHeadline,
    one.value,
    one.unit,
    one.expandedUncertainty,
    one.coverageFactor,
    one.bound,
    channel,
    step,
    hz,
    loadOhms,
    supplyVolts,
    signalDbfs,
    one.readings.length,
    one.sources.join(' '),
  ];
}
