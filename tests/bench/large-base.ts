/** A large content folder, the same at each run, for benchmarks; what a shop has besides is that of the demo. */
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { readingColumns } from '../../schemas/index.ts';
import { exactCentre } from '../../src/measure/index.ts';
import { shopEntries } from './large-base-shop.ts';

export interface LargeBaseSize {
  readonly families: number;
  readonly profiles: number;
  readonly readingsPerProfile: number;
  /** With guides, tables, plans, equipment, statements, and every tenth profile measured in a second session. */
  readonly isWhole?: boolean;
}

/** Profiles measured in one session: one sheet. */
const profilesInSession = 100;

/** Every file of the base, by path. */
export function* largeBase({
  families,
  profiles,
  readingsPerProfile,
  isWhole = false,
}: LargeBaseSize): Generator<[file: string, text: string]> {
  yield ['site.yaml', site];
  yield ['sources/bulletin.yaml', source('service-bulletin', 'Bulletin 1', '2015-01-01')];
  for (let family = 0; family < families; family += 1) {
    yield [`families/${familyId(family)}.md`, familyEntry(family)];
    yield [`sequences/${familyId(family)}-menu.yaml`, sequence(family)];
  }
  const familyOf = (index: number): number => Math.floor((index * families) / profiles);
  const idOf = (index: number): string => profileId(familyOf(index), index);
  if (isWhole) yield* shopEntries(profiles, idOf, topVoltsOf);
  let sheet: string[] = [];
  /** Rows of profiles that are measured again in the next session. */
  let again: string[] = [];
  for (let index = 0; index < profiles; index += 1) {
    const family = familyOf(index);
    const session = Math.floor(index / profilesInSession);
    const id = idOf(index);
    yield [`profiles/${id}.yaml`, profileEntry(family, index, session)];
    const rows = readingRows(id, index, readingsPerProfile);
    sheet.push(...rows);
    const isLast = session === Math.floor((profiles - 1) / profilesInSession);
    if (isWhole && index % 10 === 3 && !isLast) again.push(...rows.map(secondReading));
    if (index % profilesInSession === profilesInSession - 1 || index === profiles - 1) {
      const day = dateOf(session);
      yield [`sources/bench-${session}.yaml`, source('bench-session', `Bench session ${session}`, day)];
      yield [`outputs/session-${session}/session.yaml`, sessionEntry(session, day)];
      yield [`outputs/session-${session}/readings.csv`, `${readingColumns.join(',')}\n${sheet.join('\n')}\n`];
      sheet = again;
      again = [];
    }
  }
}

/** Writes the base into a folder. */
export async function writeLargeBase(folder: string, size: LargeBaseSize): Promise<void> {
  const made = new Set<string>();
  for (const [file, text] of largeBase(size)) {
    const path = join(folder, file);
    if (!made.has(dirname(path))) await mkdir(dirname(path), { recursive: true });
    made.add(dirname(path));
    await writeFile(path, text);
  }
}

const familyId = (family: number): string => `family-${String(family).padStart(2, '0')}`;
const letters = 'ACEFHJKLMNPRTUVWXY';
/** Two letters of the family, four figures spread over all there are. */
const codeOf = (family: number, index: number): string =>
  `${letters.charAt(family % 18)}${letters.charAt(Math.floor(family / 18) + 3)}${String((index * 7919) % 10_000).padStart(4, '0')}`;
const profileId = (family: number, index: number): string =>
  `${familyId(family)}/${codeOf(family, index).toLowerCase()}`;
/** What a profile puts out at its clip point, spread evenly. */
const topVoltsOf = (index: number): number => 2 + 4 * ((index * 0.754877666) % 1);

/** The same reading by another bench: a little off, as two good voltmeters are. */
function secondReading(row: string, at: number): string {
  const cells = row.split(',');
  const volts = Number(cells[4]) * (1 + 0.0005 * Math.sin(at));
  return [...cells.slice(0, 4), volts.toFixed(4), ...cells.slice(5)].join(',');
}
const dateOf = (session: number): string =>
  `20${String(16 + (session % 9)).padStart(2, '0')}-${String(1 + (session % 12)).padStart(2, '0')}-15`;

const site = `name: Bench of size
tagline: A base made for benchmarks
about: Every entry here is made by a program.
contact: { hours: never }
address: https://size.example
colours: { accent: "#5a3a8a", accentDark: "#c8b0f0" }
`;

function source(kind: string, title: string, date: string): string {
  return `kind: ${kind}
title: ${title}
date: ${date}
keptAt: Shelf
trust: high
trustReason: Made for a benchmark.
`;
}

function familyEntry(family: number): string {
  return `---
name: Family ${family}
maker: Kestrane
summary: Family number ${family} of a base made for benchmarks.
fitment:
  - { model: Model ${family}, fromYear: 2015, toYear: 2022 }
identify:
  - { feature: The number ${family} is printed beside the knob., control: volume }
face:
  widthMm: 180
  heightMm: 100
  screen: { xMm: 20, yMm: 10, widthMm: 140, heightMm: 40, display: dot-matrix, touch: false }
  controls:
    - { id: volume, label: Volume, kind: knob, xMm: 90, yMm: 75, widthMm: 30, heightMm: 30 }
    - { id: menu, label: MENU, kind: key, xMm: 30, yMm: 75, widthMm: 20, heightMm: 10 }
output: { channels: [FL, FR, RL, RR], topology: bridged, ratedLoadOhms: 4 }
volume: { lowestStep: 0, highestStep: 30 }
code: { pattern: '^[A-Z]{2}[0-9]{4}$', where: Two letters and four figures. }
cautions: [parked, look-only, bridged-outputs]
sources: [bulletin]
---

## How to know it

The number beside the knob tells it.
`;
}

function sequence(family: number): string {
  return `family: ${familyId(family)}
name: Menu key
summary: The menu key is held while the ignition is turned on.
cautions: [parked, engine-off-indoors, look-only]
start: dark
states:
  - { id: dark, see: The screen is dark. }
  - id: active
    see: The word ACTIVE above one code.
    shows: active-code
    activeCodeAt: The lower line.
    recovery:
      - { seen: The radio plays., advice: Begin again., goTo: dark }
transitions:
  - from: dark
    to: active
    action: { kind: hold, controls: [menu], begin: with-ignition, end: prompt-shown, leastSeconds: 3, mostSeconds: 15 }
    say: Hold MENU, turn the ignition on, and let go when the code shows.
sources: [bulletin]
`;
}

function profileEntry(family: number, index: number, session: number): string {
  return `family: ${familyId(family)}
code: "${codeOf(family, index)}"
origin: factory
system: unamplified
about: Profile number ${index} of a base made for benchmarks.
sources: [bench-${session}]
`;
}

function sessionEntry(session: number, date: string): string {
  return `source: bench-${session}
date: ${date}
bench: bench-${session % 3}
takenBy: Bench technician
instrument:
  name: True-rms bench multimeter with a distortion analyser
  resolutionVolts: 0.0001
  accuracy:
    - { fromHz: 10, toHz: 30000, ofReadingPercent: 0.2, counts: 5 }
  thdFloorPercent: 0.02
  thdOfReadingPercent: 5
signal: { kind: sine, levelDbfs: 0, levelToleranceDb: 0.05, from: Disc }
load: { ohms: 4, tolerancePercent: 1 }
supply: { volts: 14.4, toleranceVolts: 0.1 }
method: Voltmeter across the load, both leads floating.
`;
}

/** An ideal unit: even steps, a boost at 63 Hz, a second-order high-pass, a hard clip above step 24. */
function readingRows(id: string, index: number, count: number): string[] {
  // Spread evenly over gain and boost, no two alike (the plastic number's low-discrepancy sequence).
  const topVolts = topVoltsOf(index);
  const boostDb = 12 * ((index * 0.569840291) % 1);
  const rows: string[] = [];
  const read = (channel: string, step: number, hz: number, thd: string, repeat = 1): void => {
    const boost = boostDb / (1 + (Math.log2(hz / 63) * 2) ** 2);
    const highPass = -10 * Math.log10((1 + (30 / hz) ** 4) / (1 + 0.03 ** 4));
    const clean = topVolts * 10 ** ((1.5 * (step - 24) + boost + highPass) / 20);
    const volts = hz === 1000 ? Math.min(clean, topVolts * (1.05 + 0.01 * (step - 24))) : clean;
    rows.push(`${id},${channel},${step},${Number(hz.toPrecision(6))},${volts.toFixed(4)},${thd},${repeat}`);
  };
  for (let step = 1; step <= 30; step += 1)
    read('FL', step, 1000, step <= 24 ? '0.080' : (4 * (step - 24)).toFixed(1));
  for (let repeat = 2; repeat <= 3; repeat += 1) read('FL', 16, 1000, '0.080', repeat);
  for (const channel of ['FR', 'RL', 'RR']) read(channel, 16, 1000, '0.080');
  for (const step of [16, 8, 12]) {
    for (let band = -17; band <= 13; band += 1) {
      if (rows.length >= count) return rows;
      if (band !== 0) read('FL', step, exactCentre(band), '');
    }
  }
  return rows;
}
