/** The conditions of a bench session, as labelled facts that fit on a certificate. */
import type { Session } from '../../schemas/index.ts';
import { formatHz, formatNumber } from '../measure/format.ts';
import { benchSetting, longDate, plainNumber } from './wording.ts';

export interface Fact {
  readonly label: string;
  readonly text: string;
}

/** Load, supply and signal in one line, worded like the conditions of values. */
export function benchSettingOf({ load, supply, signal }: Session): string {
  return benchSetting({
    loadOhms: load.ohms,
    supplyVolts: supply.volts,
    signalDbfs: signal.levelDbfs,
  });
}

const signalWords = { sine: 'Sine', noise: 'Noise', sweep: 'Sweep' } as const;

/** Everything session.yaml says, in the order one would ask it. */
export function sessionFacts(session: Session): Fact[] {
  const { instrument, signal, load, supply } = session;
  const facts: Fact[] = [
    { label: 'Taken on', text: longDate(session.date) },
    { label: 'Bench', text: session.bench },
    { label: 'Taken by', text: session.takenBy },
    { label: 'Voltmeter', text: instrument.name },
    { label: 'Resolution', text: `${plainNumber(instrument.resolutionVolts)}\u00a0V` },
    {
      label: 'Accuracy',
      text: instrument.accuracy
        .map(
          (band) =>
            `${formatHz(band.fromHz)} to ${formatHz(band.toHz)}: ± (${plainNumber(band.ofReadingPercent)} % of reading + ${plainNumber(band.counts)} counts)`,
        )
        .join('; '),
    },
  ];
  if (instrument.thdFloorPercent !== undefined) {
    const limit =
      instrument.thdOfReadingPercent === undefined
        ? ''
        : `, ± ${plainNumber(instrument.thdOfReadingPercent)} % of reading`;
    facts.push({
      label: 'Distortion',
      text: `From ${plainNumber(instrument.thdFloorPercent)} % THD${limit}`,
    });
  }
  facts.push(
    {
      label: 'Test signal',
      text: `${signalWords[signal.kind]}, ${plainNumber(signal.levelDbfs)} dBFS ± ${plainNumber(signal.levelToleranceDb)} dB`,
    },
    { label: 'Played from', text: signal.from },
    {
      label: 'Load',
      text: `${plainNumber(load.ohms)} Ω per channel ± ${plainNumber(load.tolerancePercent)} %`,
    },
    {
      label: 'Supply',
      text: `${formatNumber(supply.volts, 1)} V DC ± ${plainNumber(supply.toleranceVolts)} V`,
    },
  );
  return facts;
}
