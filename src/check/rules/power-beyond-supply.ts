import type { Base, BenchReading, Entry, ReadingTable } from '../../base/index.ts';
import { formatNumber } from '../../measure/index.ts';
import { type RuleFinding, sheetRule } from '../rule.ts';

export const powerBeyondSupply = sheetRule({
  id: 'power-beyond-supply',
  title: 'No session draws more power from its outputs than its supply can give.',
  explanation:
    'Volts across a load are power: V²/R of each output, of all outputs at once, since all are loaded and driven while one is read. No head unit’s lead carries more than 30 A (the largest fuse in such a circuit; common practice, no source), so that the outputs together cannot give more than 30 times the supply’s volts. Readings that pass the limit of volts and still come to more have a load that was written wrongly: 0.4 Ω for 4 Ω.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'a load with a slipped decimal point',
      file: 'outputs/2026-02-loft/session.yaml',
      good: 'load: { ohms: 4,',
      bad: 'load: { ohms: 0.04,',
      foundAt: '0.04',
    },
  ],
  ofSheet: sessionFindings,
});

/** The most current a head unit draws, amperes: the largest fuse in its lead (common practice, no source). */
const mostAmperes = 30;

/** What stands at the outputs at one step and frequency of one profile. */
interface Moment {
  /** Volts squared by output. */
  readonly squares: Map<string, number>;
  readonly reading: BenchReading;
}

function sessionFindings(base: Base, session: Entry<'outputs'>, table: ReadingTable): RuleFinding[] {
  const { load, supply } = session.data;
  const mostWatts = (supply.volts + supply.toleranceVolts) * mostAmperes;
  const ohms = load.ohms * (1 + load.tolerancePercent / 100);
  // Four outputs at the whole supply each are the most there can be: most loads are clear at once.
  if ((4 * (supply.volts + supply.toleranceVolts) ** 2) / ohms <= mostWatts) return [];
  let worst: { watts: number; moment: Moment } | undefined;
  for (const moment of momentsOf(table).values()) {
    const profile = base.profiles.get(moment.reading.profile);
    const outputs = (profile && base.families.get(profile.data.family)?.data.output.channels) ?? [];
    const watts = outputs.reduce((sum, output) => sum + squareAt(moment, output) / ohms, 0);
    if (watts > mostWatts && watts > (worst?.watts ?? 0)) worst = { watts, moment };
  }
  if (!worst) return [];
  const { reading } = worst.moment;
  return [
    {
      rule: 'power-beyond-supply',
      severity: 'error',
      place: session.place(['load', 'ohms']),
      message: `Into ${load.ohms} Ω the readings of “${reading.profile}” at step ${reading.step} come to ${formatNumber(worst.watts, 0)} W from all outputs; ${supply.volts} V give ${formatNumber(mostWatts, 0)} W at the most, with ${mostAmperes} A.`,
      help: 'Look for a slipped decimal point in the load, or for volts of a unit without its load.',
      related: [{ place: table.place(reading.id, 'voltsRms'), message: 'The loudest of these readings.' }],
    },
  ];
}

function momentsOf(table: ReadingTable): Map<string, Moment> {
  const moments = new Map<string, Moment>();
  for (let row = 0; row < table.length; row += 1) {
    const reading = table.reading(row);
    const key = `${reading.profile} ${reading.step} ${reading.hz}`;
    const known = moments.get(key);
    const moment = known ?? { squares: new Map<string, number>(), reading };
    moment.squares.set(reading.channel, reading.voltsRms ** 2);
    if (!known) moments.set(key, moment);
  }
  return moments;
}

/** Left and right are driven alike: an output that was not read gives what its partner does, if that was. */
function squareAt({ squares }: Moment, output: string): number {
  const partner = `${output.slice(0, 1)}${output.endsWith('L') ? 'R' : 'L'}`;
  return squares.get(output) ?? squares.get(partner) ?? 0;
}
