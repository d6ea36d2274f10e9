/** The pictures of link previews: of their size, without text that needs a font, the same for the same subject. */
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { dotLetters } from '../../src/components/dot-letters.ts';
import { type PreviewSubject, previewPng, previewSize, previewSvg } from '../../src/components/preview.ts';
import { allViews, demoAnswers } from '../views/sample.ts';

const units = await allViews(await demoAnswers(), 'unitPages');
const subjects: PreviewSubject[] = [
  { kind: 'site' },
  { kind: 'profile', system: 'amplified' },
  { kind: 'profile', system: 'unamplified' },
  ...units.map(({ name, face }): PreviewSubject => ({ kind: 'unit', name, face })),
];

test('each subject has a picture of its own, without text', () => {
  const pictures = subjects.map((subject) => previewSvg('#8a3b12', 'A shop', subject));
  expect(new Set(pictures).size).toBe(subjects.length);
  for (const svg of pictures) expect(svg).not.toContain('<text');
});

test('the picture is a PNG of the size told, and comes out the same again', async () => {
  for (const subject of subjects.slice(0, 4)) {
    const png = await previewPng('#8a3b12', 'A shop', subject);
    const { format, width, height } = await sharp(png).metadata();
    expect({ format, width, height }).toEqual({ format: 'png', ...previewSize });
    expect(Buffer.compare(png, await previewPng('#8a3b12', 'A shop', subject))).toBe(0);
  }
});

test('no face reaches beyond the picture: its edges are paper and stub alone', async () => {
  for (const subject of subjects) {
    const png = await previewPng('#8a3b12', 'A shop with a name that is rather long for a card', subject);
    const { data, info } = await sharp(png).removeAlpha().raw().toBuffer({ resolveWithObject: true });
    const at = (x: number, y: number) => [
      ...data.subarray((y * info.width + x) * 3, (y * info.width + x) * 3 + 3),
    ];
    const paper = at(1199, 0);
    for (let y = 0; y < info.height; y += 1) expect(at(1199, y)).toEqual(paper);
    for (let x = 140; x < info.width; x += 1) expect([at(x, 0), at(x, 629)]).toEqual([paper, paper]);
  }
});

test('words are set in dots, as large as they fit', () => {
  // I of the 5×7 table: three dots, five times one, three dots.
  expect(dotLetters('I', 0, 0, 1000, 1).path.match(/M/g)).toHaveLength(11);
  expect(dotLetters('é', 0, 0, 100, 1).path).toBe(dotLetters('E', 0, 0, 100, 1).path);
  expect(dotLetters('WORDS', 0, 0, 1000, 2).width).toBe(58);
  expect(dotLetters('WORDS', 0, 0, 29, 2).width).toBe(29);
});
