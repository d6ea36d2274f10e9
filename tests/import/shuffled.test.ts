/** However a bench lays its sheet out, the readings are the same. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { faultsOf, imported, linesOf } from './sheet-of.ts';

interface Plain {
  readonly profile: string;
  readonly code: string;
  readonly channel: string;
  readonly step: number;
  readonly hz: number;
  readonly millivolts: number;
  readonly thd: number | undefined;
}

const profiles = [
  ['brasslight/8b0s-i5z', '8B0S-I5Z'],
  ['brasslight/8b0s-15z', '8B0S-15Z'],
  ['glasswick/0x7e8', '0x7E8'],
] as const;

const reading = fc.record({
  at: fc.nat(2),
  channel: fc.constantFrom('FL', 'FR', 'RL', 'RR'),
  step: fc.integer({ min: 0, max: 30 }),
  hz: fc.constantFrom(31.5, 63, 125.893, 1000, 1250, 10000),
  // Volts with hundredths: never a number that can be read in two ways.
  millivolts: fc.integer({ min: 1, max: 1299 }).map((hundredths) => hundredths * 10),
  thd: fc.option(fc.integer({ min: 1, max: 999 }), { nil: undefined }),
});

const layout = fc.record({
  order: fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6 }),
  delimiter: fc.constantFrom(',', ';', '\t'),
  decimals: fc.constantFrom('point', 'comma'),
  volts: fc.constantFrom('head V', 'head mV', 'cell V', 'cell mV'),
  frequency: fc.constantFrom('Hz', 'kHz', 'cell'),
  thd: fc.constantFrom('%', 'cell', 'ratio'),
  names: fc.constantFrom(0, 1, 2),
  gaps: fc.boolean(),
  codes: fc.constantFrom('code', 'lower', 'id'),
  channels: fc.constantFrom('short', 'words'),
  lineEnd: fc.constantFrom('\n', '\r\n', '\r'),
  encoding: fc.constantFrom('utf8', 'utf8 bom', 'utf16le', 'utf16le bom'),
  above: fc.boolean(),
});

const names = [
  ['Code', 'Channel', 'Step', 'Frequency', 'Voltage', 'THD'],
  ['Kennung', 'Kanal', 'Lautstärke', 'Frequenz', 'Spannung', 'Klirrfaktor'],
  ['Código', 'Canal', 'Volumen', 'Frecuencia', 'Tensión', 'Distorsión'],
] as const;
const channelWords: Readonly<Record<string, string>> = {
  FL: 'front left',
  FR: 'vorne rechts',
  RL: 'trasero izquierdo',
  RR: 'Rear R',
};

type Layout = typeof layout extends fc.Arbitrary<infer T> ? T : never;

function written(readings: readonly Plain[], how: Layout): Uint8Array {
  const figure = (value: number): string => {
    const text = String(Number(value.toPrecision(10)));
    return how.decimals === 'comma' ? text.replace('.', ',') : text;
  };
  const [code, channel, step, hz, volts, thd] = names[how.names] ?? names[0];
  const heads = [
    code,
    channel,
    step,
    how.frequency === 'cell' ? hz : `${hz} (${how.frequency})`,
    how.volts.startsWith('cell') ? volts : `${volts} [${how.volts.slice(5)}]`,
    how.thd === 'cell' ? thd : `${thd} (${how.thd})`,
  ];
  const inVolts = how.volts.endsWith(' V');
  const rows = readings.map((one) => {
    const amount = figure(inVolts ? one.millivolts / 1000 : one.millivolts);
    const percent = (one.thd ?? 0) / 100;
    return [
      how.codes === 'id'
        ? one.profile
        : how.codes === 'lower'
          ? one.code.toLowerCase().replace('-', ' ')
          : one.code,
      how.channels === 'short' ? one.channel : (channelWords[one.channel] ?? ''),
      String(one.step),
      how.frequency === 'cell'
        ? one.hz >= 1000
          ? `${figure(one.hz / 1000)} kHz`
          : `${figure(one.hz)}Hz`
        : figure(how.frequency === 'kHz' ? one.hz / 1000 : one.hz),
      how.volts.startsWith('cell') ? `${amount} ${how.volts.slice(5)}` : amount,
      one.thd === undefined
        ? ''
        : how.thd === 'cell'
          ? `${figure(percent)} %`
          : figure(how.thd === '%' ? percent : percent / 100),
    ];
  });
  const shown = rows.map((row, at) => {
    const above = rows[at - 1];
    if (!how.gaps || !above || above[0] !== row[0]) return row;
    return row.map((cell, column) => (column < 4 && cell === above[column] ? '' : cell));
  });
  const line = (cells: readonly string[]): string =>
    how.order
      .map((at) => cells[at] ?? '')
      .map((cell) => (cell.includes(how.delimiter) ? `"${cell}"` : cell))
      .join(how.delimiter);
  const above = how.above ? [`Bench: North`, '', 'Some title of the shop'] : [];
  const text = [...above, line(heads), ...shown.map(line), ''].join(how.lineEnd);
  if (how.encoding.startsWith('utf8')) {
    return Buffer.from(how.encoding.endsWith('bom') ? `\uFEFF${text}` : text, 'utf8');
  }
  return Buffer.from(how.encoding.endsWith('bom') ? `\uFEFF${text}` : text, 'utf16le');
}

test('columns in any order, three delimiters, both decimal signs, units in heads or cells, gaps, four encodings', () => {
  fc.assert(
    fc.property(fc.array(reading, { minLength: 1, maxLength: 12 }), layout, (drawn, how) => {
      const seen = new Set<string>();
      const readings = drawn
        .map(({ at, ...one }): Plain => {
          const [profile, code] = profiles[at] ?? profiles[0];
          return { profile, code, ...one };
        })
        .filter(({ profile, channel, step, hz }) => {
          const key = `${profile} ${channel} ${step} ${hz}`;
          if (seen.has(key)) return false;
          seen.add(key);
          return true;
        });
      const found = imported(written(readings, how), { decimals: how.decimals as 'point' | 'comma' });
      expect(faultsOf(found)).toEqual([]);
      expect(linesOf(found)).toEqual(
        readings.map(({ profile, channel, step, hz, millivolts, thd }) =>
          [profile, channel, step, hz, millivolts / 1000, thd === undefined ? '-' : thd / 100, 1].join(' '),
        ),
      );
    }),
    { numRuns: 200, seed: 5 },
  );
});
