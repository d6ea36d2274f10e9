/**
 * How well and how fast codes are looked up: 10,000 of them in 40 families of all three displays, read by
 * readers who slip. `npm run bench -- codes [CODES]`
 */
import { gzipSync } from 'node:zlib';
import Fuse from 'fuse.js';
import MiniSearch from 'minisearch';
import { canonicalCode } from '../../src/codes/canonical-code.ts';
import { buildCodeIndex, type CodeEntry, type CodeIndex, findCode } from '../../src/codes/index.ts';
import { idealRank } from '../codes/ideal-rank.ts';
import { type LargeList, largeList } from '../codes/large-list.ts';
import { misread, modelReader, otherReader, type Reader, reading } from '../codes/readers.ts';
import { randomNumbers } from '../codes/sample.ts';
import { inParts, sentList } from './codes-in-parts.ts';

type Random = () => number;

const rounds = 3000;
const readers = [
  modelReader('the model'),
  modelReader('twice the look-alikes', 2),
  modelReader('half of them', 0.5),
  otherReader,
];

/** Runs the benchmark and prints its figures. */
export async function benchCodes(codes: number): Promise<void> {
  const list = largeList(codes, 40, 1);
  const start = performance.now();
  const index = buildCodeIndex(list.known);
  console.log(
    `codes: ${list.known.length} in 40 families; index made in ${(performance.now() - start).toFixed(0)} ms`,
  );
  size(list.known);
  exact(index, list.known);
  for (const reader of readers) {
    for (const known of [false, true]) accuracy(index, list.known, reader, 1, known);
    accuracy(index, list.known, reader, 2, false);
  }
  ceiling(index, list.known);
  unknown(index, list);
  for (const known of [false, true]) calibration(index, list, readers[0] as Reader, known);
  calibration(index, list, otherReader, false);
  speed(index, list.known);
  await inParts(index, list.known);
}

const some = <Kind>(list: readonly Kind[], random: Random): Kind =>
  list[Math.floor(random() * list.length)] as Kind;
const percent = (part: number, whole: number): string =>
  `${((100 * part) / Math.max(1, whole)).toFixed(2)} %`;

function size(known: readonly CodeEntry[]): void {
  const zipped = gzipSync(JSON.stringify(sentList(known)), { level: 9 }).length;
  const alone = gzipSync(known.map(({ code }) => code).join('\n'), { level: 9 }).length;
  console.log(
    `  list in one: ${(zipped / known.length).toFixed(2)} bytes a code gzipped, ${((zipped - alone) / known.length).toFixed(3)} beyond the codes alone`,
  );
}

function exact(index: CodeIndex, known: readonly CodeEntry[]): void {
  let [first, found] = [0, 0];
  for (const { code } of known) {
    const { candidates, verdict } = findCode(index, code, { limit: 1 });
    if (canonicalCode(candidates[0]?.code ?? '') === canonicalCode(code)) first += 1;
    if (verdict === 'found') found += 1;
  }
  console.log(`  read right: first ${percent(first, known.length)}, found ${percent(found, known.length)}`);
}

function accuracy(
  index: CodeIndex,
  known: readonly CodeEntry[],
  reader: Reader,
  slips: number,
  family: boolean,
): void {
  const random = randomNumbers(2);
  let [first, three, five, found, foundWrong] = [0, 0, 0, 0, 0];
  for (let round = 0; round < rounds; round += 1) {
    const entry = some(known, random);
    const typed = misread(entry, slips, reader, random);
    const { candidates, verdict } = findCode(index, typed, family ? { family: entry.family } : {});
    const rank = candidates.findIndex(({ profile }) => profile === entry.profile);
    if (rank === 0) first += 1;
    if (rank >= 0 && rank < 3) three += 1;
    if (rank >= 0 && rank < 5) five += 1;
    if (verdict === 'found') found += 1;
    if (verdict === 'found' && rank !== 0) foundWrong += 1;
  }
  console.log(
    `  ${slips} misread, ${reader.name}, family ${family ? 'known' : 'unknown'}: first ${percent(first, rounds)}, in three ${percent(three, rounds)}, in five ${percent(five, rounds)}; found ${percent(found, rounds)}, wrongly ${percent(foundWrong, rounds)}`,
  );
}

/** What an ideal reader of the list could do with one misread: the list's own ambiguity. */
function ceiling(index: CodeIndex, known: readonly CodeEntry[]): void {
  const random = randomNumbers(2);
  const reader = readers[0] as Reader;
  let [first, three, asExact, ours] = [0, 0, 0, 0];
  const sample = 400;
  for (let round = 0; round < sample; round += 1) {
    const entry = some(known, random);
    const typed = misread(entry, 1, reader, random);
    const rank = idealRank(known, entry, typed, reader);
    if (rank === 0) first += 1;
    if (rank < 3) three += 1;
    if (index.entriesOf.has(typed)) asExact += 1;
    if (findCode(index, typed).candidates[0]?.profile === entry.profile) ours += 1;
  }
  console.log(
    `  ceiling, 1 misread: ideal first ${percent(first, sample)}, in three ${percent(three, sample)}; typed exactly like another code ${percent(asExact, sample)}; the lookup on the same ${percent(ours, sample)}`,
  );
}

function unknown(index: CodeIndex, { known, unknown: others }: LargeList): void {
  const random = randomNumbers(3);
  const symbols = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789';
  const kinds: Readonly<Record<string, () => { typed: string; family?: string }>> = {
    'unknown, of the same families and their relatives': () => ({ typed: some(others, random).code }),
    'the same, family known': () => {
      const { code, family } = some(others, random);
      return { typed: code, family };
    },
    'the same, with one misread': () => ({
      typed: misread(some(others, random), 1, readers[0] as Reader, random),
    }),
    'any characters': () => ({
      typed: Array.from({ length: 6 + Math.floor(random() * 4) }, () =>
        some(Array.from(symbols), random),
      ).join(''),
    }),
    'another family’s code, family known': () => {
      const { code, family } = some(known, random);
      return {
        typed: code,
        family: some(
          known.filter((one) => one.family !== family),
          random,
        ).family,
      };
    },
  };
  for (const [name, make] of Object.entries(kinds)) {
    const verdicts: Record<string, number> = {};
    for (let round = 0; round < rounds; round += 1) {
      const { typed, family } = make();
      const { verdict, elsewhere } = findCode(index, typed, family === undefined ? {} : { family });
      const said = verdict === 'unknown' && elsewhere.length > 0 ? 'elsewhere' : verdict;
      verdicts[said] = (verdicts[said] ?? 0) + 1;
    }
    const told = Object.entries(verdicts).map(([verdict, count]) => `${verdict} ${percent(count, rounds)}`);
    console.log(`  ${name}: ${told.join(', ')}`);
  }
}

/** Readings as the priors have them: eight known, two unknown in ten, any number of slips. */
function calibration(index: CodeIndex, list: LargeList, reader: Reader, family: boolean): void {
  const random = randomNumbers(4);
  const bins = [0, 0.05, 0.2, 0.4, 0.6, 0.8, 0.9, 0.95, 0.98, 0.995, 1.01];
  const counts = bins.map(() => ({ all: 0, right: 0, stated: 0 }));
  for (let round = 0; round < 3 * rounds; round += 1) {
    const isKnown = random() < 0.8;
    const entry = some(isKnown ? list.known : list.unknown, random);
    const { candidates } = findCode(
      index,
      reading(entry, reader, random),
      family ? { family: entry.family } : {},
    );
    for (const { probability, profile } of candidates) {
      const bin = counts[bins.findLastIndex((from) => probability >= from)];
      if (!bin) continue;
      bin.all += 1;
      bin.stated += probability;
      if (isKnown && profile === entry.profile) bin.right += 1;
    }
  }
  console.log(`  calibration, ${reader.name}, family ${family ? 'known' : 'unknown'} (stated: right, of)`);
  for (const { all, right, stated } of counts) {
    if (all > 0)
      console.log(`    ${percent(stated, all).padStart(8)}: ${percent(right, all).padStart(8)}, ${all}`);
  }
}

/** Of the processor: what else runs on the machine does not count. */
function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

function speed(index: CodeIndex, known: readonly CodeEntry[]): void {
  const reader = readers[0] as Reader;
  const documents = known.map(({ code, profile }, id) => ({ id, code: canonicalCode(code), profile }));
  const fuse = new Fuse(documents, { keys: ['code'] });
  const mini = new MiniSearch<{ id: number; code: string; profile: string }>({
    fields: ['code'],
    storeFields: ['profile'],
    searchOptions: { fuzzy: 0.3, prefix: true },
  });
  mini.addAll(documents);
  const ways: Readonly<Record<string, (typed: string) => readonly unknown[]>> = {
    'this lookup': (typed) => findCode(index, typed, { limit: 6 }).candidates.map(({ profile }) => profile),
    'fuse.js': (typed) => fuse.search(typed, { limit: 6 }).map(({ item }) => item.profile),
    minisearch: (typed) =>
      mini
        .search(typed)
        .slice(0, 6)
        .map((result) => result.profile as unknown),
  };
  let ours = 0;
  for (const [name, search] of Object.entries(ways)) {
    const random = randomNumbers(6);
    const times: number[] = [];
    let [first, three] = [0, 0];
    const sample = 300;
    for (let round = -50; round < sample; round += 1) {
      const entry = some(known, random);
      const typed = misread(entry, 1, reader, random);
      for (let length = 1; length <= typed.length; length += 1) {
        const start = processorMs();
        const results = search(typed.slice(0, length));
        if (round < 0) continue;
        times.push(processorMs() - start);
        if (length < typed.length) continue;
        if (results[0] === entry.profile) first += 1;
        if (results.slice(0, 3).includes(entry.profile)) three += 1;
      }
    }
    times.sort((a, b) => a - b);
    const at = (share: number): number => times[Math.floor(times.length * share)] ?? 0;
    ours ||= at(0.5);
    console.log(
      `  a key, ${name}, of the processor: median ${at(0.5).toFixed(2)} ms (${(at(0.5) / ours).toFixed(1)}), p99 ${at(0.99).toFixed(2)} ms; 1 misread: first ${percent(first, sample)}, in three ${percent(three, sample)}`,
    );
  }
}
