/**
 * What measuring costs: the characteristics of many profiles, as a ratio to parsing the same sheets with the
 * CSV library and nothing else, side by side in one run. `npm run bench -- measure [PROFILES]`
 */
import { parse } from 'csv-parse/sync';
import { readingColumns } from '../../schemas/index.ts';
import { TextFile } from '../../src/base/index.ts';
import { readReadings } from '../../src/base/readings.ts';
import { characterise, exactCentre } from '../../src/measure/index.ts';
import { session } from '../measure/bench.ts';

const profilesInSheet = 100;

/** A sheet of 100 profiles with 200 readings each: 40 steps, three responses, other outputs, repeats. */
function sheet(number: number): string {
  const rows: string[] = [readingColumns.join(',')];
  for (let profile = 0; profile < profilesInSheet; profile += 1) {
    const id = `family/p${number}-${profile}`;
    const gain = 1 + profile / 500;
    const read = (channel: string, step: number, hz: number, thd: string, repeat = 1): void => {
      const boost = 6 / (1 + (Math.log2(hz / 63) * 2) ** 2);
      const highPass = -10 * Math.log10(1 + (30 / hz) ** 4);
      const volts = Math.min(10, 0.01 * gain * 10 ** ((step * 1.6 + boost + highPass) / 20));
      rows.push(`${id},${channel},${step},${Number(hz.toPrecision(6))},${volts.toFixed(4)},${thd},${repeat}`);
    };
    for (let step = 1; step <= 40; step += 1)
      read('FL', step, 1000, step <= 36 ? '0.08' : String(3 * (step - 36)));
    for (const step of [10, 20, 30]) {
      for (let repeat = 2; repeat <= 5; repeat += 1) read('FL', step, 1000, '0.08', repeat);
      for (let band = -17; band <= 13; band += 1) if (band !== 0) read('FL', step, exactCentre(band), '');
    }
    for (const channel of ['FR', 'RL', 'RR']) {
      for (const step of [10, 20, 30]) for (const hz of [63, 1000]) read(channel, step, hz, '');
    }
    while ((rows.length - 1) % 200 !== 0) read('RR', 15, 100 + (rows.length % 200), '');
  }
  return `${rows.join('\n')}\n`;
}

/** Parses a sheet and lets it go, so that its rows do not burden what is timed next. */
function rowsParsed(text: string): number {
  return (parse(text) as string[][]).length;
}

/** Runs the benchmark over so many profiles and prints its figures. */
export function benchMeasure(profiles: number): void {
  const sheets = Math.ceil(profiles / profilesInSheet);
  let [parseMs, readMs, computeMs, readings, values] = [0, 0, 0, 0, 0];
  let mostHeapMb = 0;
  const firstHeapMb: number[] = [];
  for (let number = 0; number < sheets; number += 1) {
    const text = sheet(number);
    let start = performance.now();
    readings += rowsParsed(text) - 1;
    parseMs += performance.now() - start;
    start = performance.now();
    const { table, findings } = readReadings(new TextFile('readings.csv', text), `s${number}`);
    readMs += performance.now() - start;
    if (findings.length > 0) throw new Error(findings[0]?.message ?? 'the sheet has findings');
    start = performance.now();
    for (const profile of table.profiles) {
      const run = { session: table.session, conditions: session, readings: table.readingsOf(profile) };
      const output = characterise(profile, [run], { ratedLoadOhms: 4, highestStep: 40 });
      // Uncertainties follow when they are asked for: ask for all.
      const found = [
        ...output.characteristics,
        ...output.others,
        ...output.levelByStep.map(({ volts }) => volts),
        ...output.stepLaw.map(({ stepSize }) => stepSize),
        ...output.responses.flatMap(({ points }) => points.map(({ level }) => level)),
      ];
      for (const one of found) if (one.expandedUncertainty >= 0) values += 1;
    }
    computeMs += performance.now() - start;
    const heapMb = process.memoryUsage().heapUsed / 1024 ** 2;
    mostHeapMb = Math.max(mostHeapMb, heapMb);
    if (number < 10) firstHeapMb.push(heapMb);
  }
  const seconds = (ms: number): string => `${(ms / 1000).toFixed(2)} s`;
  console.log(`measure: ${sheets * profilesInSheet} profiles, ${readings} readings, ${values} values with U`);
  console.log(`  parsing the CSV alone            ${seconds(parseMs)}   1.00`);
  console.log(`  reading and checking every row   ${seconds(readMs)}   ${(readMs / parseMs).toFixed(2)}`);
  console.log(
    `  computing characteristics        ${seconds(computeMs)}   ${(computeMs / parseMs).toFixed(2)}`,
  );
  console.log(
    `  most heap in use ${mostHeapMb.toFixed(0)} MB; in the first ten sheets ${Math.max(...firstHeapMb).toFixed(0)} MB`,
  );
}
