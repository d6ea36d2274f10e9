/** What `readback sweep` prints for people. */
import type { SweepFigures, SweepResult, ToneFigures } from '../../../schemas/results/sweep.ts';
import { formatHz, formatNumber } from '../../measure/index.ts';
import { describeStimulus, parseStimulus, type StereoChannel } from '../../measure/recording/index.ts';
import { counted } from '../../words/index.ts';

/** The figures as a heading, a table, and what has to be known to read it. */
export function sweepText(result: SweepResult, take: StereoChannel | undefined): string {
  if (result.kind === 'unusable') return result.message;
  const stimulus = parseStimulus(result.stimulus);
  const what = stimulus.kind === 'problem' ? result.stimulus : describeStimulus(stimulus);
  const channel = take ? `, ${take} channel` : '';
  return [
    `${what.charAt(0).toUpperCase()}${what.slice(1)}${channel}, recorded at ${result.sampleRateHz / 1000} kHz, ${formatNumber(result.signalToNoiseDb, 0)} dB above the noise.`,
    '',
    ...(result.kind === 'tone' ? toneLines(result) : sweepLines(result)),
    ...(result.session
      ? ['', `Wrote ${counted(result.session.readings, 'reading')}: ${result.session.files.join(', ')}`]
      : []),
  ].join('\n');
}

function sweepLines(figures: SweepFigures): string[] {
  const inVolts = figures.levelReference === '1 V';
  const orders = [...new Set(figures.distortion.map(({ order }) => order))].sort((a, b) => a - b);
  const rows = figures.response.map(({ hz, levelDb, voltsRms }) => [
    formatHz(hz),
    formatNumber(levelDb, 2),
    ...(inVolts ? [voltsRms === undefined ? '' : formatVolts(voltsRms)] : []),
    percentOf(figures.thd.find((one) => one.hz === hz)),
    ...orders.map((order) =>
      percentOf(figures.distortion.find((one) => one.hz === hz && one.order === order)),
    ),
  ]);
  const head = [
    'at',
    inVolts ? 'level dBV' : 'level dB',
    ...(inVolts ? ['V rms'] : []),
    'THD %',
    ...orders.map((order) => `${ordinal(order)} %`),
  ];
  return [
    ...table([head, ...rows]),
    '',
    inVolts
      ? 'Levels are those of the fundamental.'
      : 'Levels are relative to 1 kHz; give --reference 1000=VOLTS for volts.',
    'THD counts harmonics 2 to 5 within the sweep; ≤ means no more than that: it does not stand clear of the noise.',
    ...(figures.fullScaleVoltsRms === undefined ? [] : [fullScaleLine(figures.fullScaleVoltsRms)]),
    ...leftOutLines(figures),
  ];
}

function leftOutLines({ leftOut }: SweepFigures): string[] {
  const reasons = [...new Set(leftOut.map(({ reason }) => reason))];
  return reasons.map((reason) => {
    const at = leftOut.filter((one) => one.reason === reason).map(({ hz }) => formatHz(hz));
    return `Not told, ${reason}: ${at.join(', ')}`;
  });
}

function toneLines(figures: ToneFigures): string[] {
  const { level, thd, noiseBandHz } = figures;
  const inVolts = level.voltsRms === undefined ? '' : `${formatVolts(level.voltsRms)} V rms, `;
  const dbv = level.levelDbv === undefined ? '' : `${formatNumber(level.levelDbv, 2)} dBV, `;
  const [total] = thd;
  const band = noiseBandHz.map((hz) => formatHz(hz)).join(' to ');
  return [
    `Level  ${inVolts}${dbv}${formatNumber(level.levelDbfs, 2)} dBFS`,
    total
      ? `THD    ${percentOf(total)} % (harmonics 2 to ${total.upToOrder})`
      : `THD    not known: no harmonic lies below ${formatHz(noiseBandHz[1])}`,
    `THD+N  ${formatPercent(figures.thdPlusNoise)} % (${band})`,
    ...figures.distortion.map((one) => `  ${ordinal(one.order)}  ${percentOf(one)} %`),
    `Clipped  ${figures.clipped ? 'yes' : 'no'}`,
    ...(figures.fullScaleVoltsRms === undefined ? [] : [fullScaleLine(figures.fullScaleVoltsRms)]),
    ...(level.voltsRms === undefined
      ? [
          `For volts, give --reference ${figures.response[0]?.hz ?? 1000}=VOLTS as read with a meter, or --full-scale VOLTS.`,
        ]
      : []),
  ];
}

function fullScaleLine(voltsRms: number): string {
  return `At this input gain a full-scale sine is ${formatVolts(voltsRms)} V rms: --full-scale ${Number(voltsRms.toPrecision(5))} for other recordings.`;
}

function percentOf(one: { readonly ratio: number; readonly bound: 'exact' | 'at-most' } | undefined): string {
  if (!one) return '–';
  return one.bound === 'at-most' || one.ratio < 1e-6
    ? `≤ ${formatPercent(one.ratio)}`
    : formatPercent(one.ratio);
}

/** A ratio as per cent, to three significant digits, no finer than 0.0001 %. */
function formatPercent(ratio: number): string {
  const percent = 100 * ratio;
  if (percent < 0.0001) return '0.0001';
  return formatNumber(percent, Math.max(0, Math.min(4, 2 - Math.floor(Math.log10(percent)))));
}

/** Volts to four significant digits. */
function formatVolts(voltsRms: number): string {
  const rounded = Number(voltsRms.toPrecision(4));
  return formatNumber(rounded, Math.max(0, Math.min(6, 3 - Math.floor(Math.log10(Math.max(rounded, 1e-6))))));
}

function ordinal(order: number): string {
  return order === 2 ? '2nd' : order === 3 ? '3rd' : `${order}th`;
}

/** Columns set flush right, two spaces apart. */
function table(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, column) =>
    Math.max(...rows.map((row) => (row[column] ?? '').length)),
  );
  return rows.map((row) => row.map((cell, column) => cell.padStart(widths[column] ?? 0)).join('  '));
}
