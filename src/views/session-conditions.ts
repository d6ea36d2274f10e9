/** The conditions of a bench session, as labelled facts that fit on a certificate. */
import type { Session } from '../../schemas/index.ts';
import { formatHz, formatNumber } from '../measure/format.ts';
import { phrase } from '../words/index.ts';
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

function signalWord(kind: Session['signal']['kind']): string {
  const words: Readonly<Record<Session['signal']['kind'], string>> = {
    sine: phrase('Sine'),
    noise: phrase('Noise'),
    sweep: phrase('Sweep'),
  };
  return words[kind];
}

/** Everything session.yaml says, in the order one would ask it. */
export function sessionFacts(session: Session): Fact[] {
  const { instrument, signal, load, supply } = session;
  const facts: Fact[] = [
    { label: phrase('Taken on'), text: longDate(session.date) },
    { label: phrase('Bench'), text: session.bench },
    { label: phrase('Taken by'), text: session.takenBy },
    { label: phrase('Voltmeter'), text: instrument.name },
    { label: phrase('Resolution'), text: `${plainNumber(instrument.resolutionVolts)}\u00a0V` },
    {
      label: phrase('Accuracy'),
      text: instrument.accuracy
        .map((band) =>
          phrase('{from} to {to}: ± ({percent} % of reading + {counts} counts)', {
            from: formatHz(band.fromHz),
            to: formatHz(band.toHz),
            percent: plainNumber(band.ofReadingPercent),
            counts: plainNumber(band.counts),
          }),
        )
        .join('; '),
    },
  ];
  if (instrument.thdFloorPercent !== undefined) {
    const floor = plainNumber(instrument.thdFloorPercent);
    facts.push({
      label: phrase('Distortion'),
      text:
        instrument.thdOfReadingPercent === undefined
          ? phrase('From {floor} % THD', { floor })
          : phrase('From {floor} % THD, ± {percent} % of reading', {
              floor,
              percent: plainNumber(instrument.thdOfReadingPercent),
            }),
    });
  }
  facts.push(
    {
      label: phrase('Test signal'),
      text: `${signalWord(signal.kind)}, ${plainNumber(signal.levelDbfs)} dBFS ± ${plainNumber(signal.levelToleranceDb)} dB`,
    },
    { label: phrase('Played from'), text: signal.from },
    {
      label: phrase('Load'),
      text: phrase('{load} Ω per channel ± {tolerance} %', {
        load: plainNumber(load.ohms),
        tolerance: plainNumber(load.tolerancePercent),
      }),
    },
    {
      label: phrase('Supply'),
      text: `${formatNumber(supply.volts, 1)} V DC ± ${plainNumber(supply.toleranceVolts)} V`,
    },
  );
  return facts;
}
