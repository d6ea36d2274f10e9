/** A check that remembers finds what a check that does not finds, and looks only at what has changed. */
import { readFile } from 'node:fs/promises';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { MapMemory, MemoryFiles } from '../../src/base/index.ts';
import { checkContent } from '../../src/check/index.ts';
import { filesOf } from './example-base.ts';

const demo = await filesOf('content');

/** A memory as the next run has it: what survived being written out. */
function writtenOut(memory: MapMemory): MapMemory {
  return new MapMemory(JSON.parse(JSON.stringify([...memory.used])) as [string, unknown][]);
}

const edits: readonly (readonly [file: string, from: string, to: string])[] = [
  ['outputs/2024-02-north/readings.csv', ',16,1000,1.6400,', ',16,1000,1.4600,'],
  ['outputs/2024-02-north/readings.csv', ',23,1000,6.3088,', ',23,1000,16.3088,'],
  ['outputs/2024-02-north/session.yaml', 'volts: 14.4', 'volts: 9'],
  ['outputs/2024-11-north/readings.csv', '0x5b0,FL,21,1000,0.5017', '0x5b0,FL,21,1000,0.5917'],
  ['profiles/brasslight/8b0s-i5z.yaml', 'code: "8B0S-I5Z"', 'code: 12'],
  ['statements/riders-report-ordwick-clean-step.yaml', 'valueStep: 24', 'valueStep: 14'],
  ['families/brasslight.md', 'topology: bridged', 'topology: ground-referenced'],
  ['families/brasslight.md', 'highestStep: 30', 'highestStep: 20'],
  ['profiles/brasslight/i1l0-s5g.yaml', 'sameAs: brasslight/8b0s-i5z\n', ''],
  ['profiles/brasslight/i1l0-s5g.yaml', 'brasslight/8b0s-i5z\n', 'brasslight/g60d-2zs\n'],
  ['sources/kestrane-bulletin-22-03.yaml', 'trust: high', 'trust: hgh'],
  ['tables/reflash-towards-what.yaml', 'lower-corner: "> 80"', 'lower-corner: "> 90"'],
  [
    'tables/amplifier-without-reflash.yaml',
    'boost: "> 4" }\n    give: { answer: keep',
    'boost: "> 4.01" }\n    give: { answer: keep',
  ],
];

test('after any few edits, with the memory of the run before, the findings are those of a first run', {
  timeout: 180_000,
}, async () => {
  const memory = new MapMemory();
  expect((await checkContent(new MemoryFiles('demo', demo), { memory })).findings).toEqual([]);
  await fc.assert(
    fc.asyncProperty(
      fc.uniqueArray(fc.integer({ min: 0, max: edits.length - 1 }), { maxLength: 3 }),
      async (chosen) => {
        const files = new Map(demo);
        for (const index of chosen) {
          const [file, from, to] = edits[index] ?? ['', '', ''];
          const before = files.get(file) ?? '';
          files.set(file, before.replace(from, to));
        }
        const content = new MemoryFiles('demo', files);
        const anew = await checkContent(content);
        const again = await checkContent(content, { memory: writtenOut(memory) });
        expect(again.findings).toEqual(anew.findings);
        expect(anew.findings.length).toBeGreaterThanOrEqual(Math.min(1, chosen.length));
      },
    ),
    { numRuns: 8, seed: 11 },
  );
});

test('a session moved to another folder is named by its new one', async () => {
  const broken = new Map(demo);
  const [sheet, session] = ['readings.csv', 'session.yaml'].map((file) => `outputs/2024-02-north/${file}`);
  for (const file of [sheet ?? '', session ?? '']) {
    const text = demo.get(file) ?? '';
    broken.set(
      file,
      text.replace(',16,1000,1.6400,', ',16,1000,1.4600,').replace(',23,1000,6.3088,', ',23,1000,16.3088,'),
    );
  }
  const memory = new MapMemory();
  expect((await checkContent(new MemoryFiles('demo', broken), { memory })).findings.length).toBeGreaterThan(
    1,
  );
  const moved = new Map(
    [...broken].map(([file, text]) => [file.replace('2024-02-north/', '2024-02-south/'), text]),
  );
  const content = new MemoryFiles('demo', moved);
  const again = await checkContent(content, { memory: writtenOut(memory) });
  expect(again.findings).toEqual((await checkContent(content)).findings);
  expect(again.findings.some(({ place }) => place.file === 'outputs/2024-02-south/readings.csv')).toBe(true);
});

test('a second run over the same content learns nothing new', async () => {
  const memory = new MapMemory();
  const content = new MemoryFiles('demo', demo);
  const { findings } = await checkContent(content, { memory });
  const second = writtenOut(memory);
  expect((await checkContent(content, { memory: second })).findings).toEqual(findings);
  expect(second.hasChanged).toBe(false);
});

test('every edit of the list finds its text', async () => {
  for (const [file, from] of edits)
    expect(
      (await readFile(`content/${file}`, 'utf8')).split(from).length,
      `${file}: ${from}`,
    ).toBeGreaterThan(1);
});
