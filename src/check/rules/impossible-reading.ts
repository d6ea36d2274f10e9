import type { Reading } from '../../../schemas/index.ts';
import type { Base, BenchReading, Entry, ReadingTable } from '../../base/index.ts';
import { formatHz, formatNumber } from '../../measure/index.ts';
import { voltsLimit } from '../readings/volts-limit.ts';
import { type RuleFinding, sheetRule } from '../rule.ts';

export const impossibleReading = sheetRule({
  id: 'impossible-reading',
  title: 'No reading says what the unit, the supply or the instrument cannot do.',
  explanation:
    'An output can swing at most the supply: a clean sine from a bridged output is at most the supply divided by √2, from a ground-referenced one half of that; clipped, at most the supply itself, or half. THD cannot read below the analyser’s floor. A frequency must be one the voltmeter is specified for. Most often the decimal point has slipped, peak volts were written for rms, or two columns were swapped.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'a slipped decimal point',
      file: 'outputs/2025-05-shed/readings.csv',
      good: '6.3041,0.080',
      bad: '63.041,0.080',
      foundAt: '63.041',
    },
  ],
  ofSheet: sheetFindings,
});

function sheetFindings(base: Base, session: Entry<'outputs'>, table: ReadingTable): RuleFinding[] {
  const findings: RuleFinding[] = [];
  for (let row = 0; row < table.length; row += 1) {
    const reading = table.reading(row);
    const profile = base.profiles.get(reading.profile);
    const family = profile && base.families.get(profile.data.family);
    if (!family) continue;
    const fault = faultOf(reading, session, family);
    if (!fault) continue;
    findings.push({
      rule: 'impossible-reading',
      severity: 'error',
      place: table.place(reading.id, fault.column),
      message: fault.message,
      help: fault.help,
      related: [{ place: session.place(fault.because), message: 'The limit follows from this.' }],
      claims: [reading.id],
    });
  }
  return findings;
}

interface Fault {
  readonly column: keyof Reading;
  readonly message: string;
  readonly help: string;
  /** The path in session.yaml the limit comes from. */
  readonly because: readonly (string | number)[];
}

function faultOf(
  reading: BenchReading,
  session: Entry<'outputs'>,
  family: Entry<'families'>,
): Fault | undefined {
  const { output } = family.data;
  const { instrument } = session.data;
  const accuracy = instrument.accuracy.find((band) => reading.hz >= band.fromHz && reading.hz <= band.toHz);
  if (!accuracy) {
    return {
      column: 'hz',
      message: `The voltmeter is not specified at ${formatHz(reading.hz)}.`,
      help: 'Correct the frequency, or add the accuracy band to the session’s instrument.',
      because: ['instrument', 'accuracy'],
    };
  }
  const limit = voltsLimit(reading, session.data, output.topology);
  const readingError =
    (accuracy.ofReadingPercent / 100) * reading.voltsRms + accuracy.counts * instrument.resolutionVolts;
  if (reading.voltsRms - readingError > limit.volts) {
    return {
      column: 'voltsRms',
      message: `${formatNumber(reading.voltsRms, 2)} V is more than this output can give: ${limit.why}, ${formatNumber(limit.volts, 2)} V.`,
      help: 'Look for a slipped decimal point, peak volts written for rms, or a wrong supply in session.yaml.',
      because: ['supply', 'volts'],
    };
  }
  if (reading.thdPercent === null) return undefined;
  if (instrument.thdFloorPercent === undefined) {
    return {
      column: 'thdPercent',
      message: 'A THD reading stands here, but the session names no distortion analyser.',
      help: 'Add thdFloorPercent and thdOfReadingPercent to the instrument in session.yaml.',
      because: ['instrument'],
    };
  }
  const thdError = ((instrument.thdOfReadingPercent ?? 0) / 100) * reading.thdPercent;
  if (reading.thdPercent + thdError < instrument.thdFloorPercent) {
    return {
      column: 'thdPercent',
      message: `THD of ${reading.thdPercent} % is below what the analyser can tell, ${instrument.thdFloorPercent} %.`,
      help: 'Look for a ratio written for per cent, or a slipped decimal point.',
      because: ['instrument', 'thdFloorPercent'],
    };
  }
  return undefined;
}
