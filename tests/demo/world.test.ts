import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import {
  entrySchemas,
  type Kind,
  markdownKinds,
  type Reading,
  readingColumns,
  readingSchema,
} from '../../schemas/index.ts';
import { families as modelFamilies } from '../../src/demo/world/index.ts';
import { contentFolder, entriesOf } from './entries.ts';

const families = entriesOf('families');
const profiles = entriesOf('profiles');
const sessions = entriesOf('outputs');

/** The rows of a session's sheet, each held to its schema. */
function readings(session: string): Reading[] {
  const [header, ...rows] = readFileSync(join(contentFolder, 'outputs', session, 'readings.csv'), 'utf8')
    .trimEnd()
    .split('\n');
  expect(header).toBe(readingColumns.join(','));
  return rows.map((row) => {
    const [profile, channel, step, hz, voltsRms, thdPercent, repeat] = row.split(',');
    return readingSchema.parse({
      profile,
      channel,
      step: Number(step),
      hz: Number(hz),
      voltsRms: Number(voltsRms),
      thdPercent: thdPercent === '' ? null : Number(thdPercent),
      repeat: Number(repeat),
    });
  });
}
const sheets = new Map(sessions.map(({ id }) => [id, readings(id)]));
const measured = (session: string) => new Set(sheets.get(session)?.map(({ profile }) => profile));

describe('every entry', () => {
  // The demo is without fault, so it has nothing to make an exception to; its languages are the shipped ones.
  const kinds = Object.keys(entrySchemas).filter(
    (kind): kind is Exclude<Kind, 'site' | 'exceptions' | 'words'> =>
      !['site', 'exceptions', 'words'].includes(kind),
  );

  it.each(kinds)('of %s holds to its schema', (kind) => {
    expect(entriesOf(kind).length).toBeGreaterThan(0);
  });

  it('of site holds to its schema', () => {
    const site = entrySchemas.site.parse(parse(readFileSync(join(contentFolder, 'site.yaml'), 'utf8')));
    expect(site.notice).toContain('invented');
  });

  it.each(kinds.filter((kind) => !markdownKinds.includes(kind)))('of %s names its JSON Schema', (kind) => {
    for (const { text, id } of entriesOf(kind)) {
      const depth = kind === 'outputs' ? 2 : id.split('/').length;
      const folders = `\\.\\./`.repeat(depth + 1);
      expect(text).toMatch(
        new RegExp(`^# yaml-language-server: \\$schema=${folders}schemas/json/[a-z]+\\.schema\\.json\n`),
      );
    }
  });

  it('rests on sources that exist, and no source is there for nothing', () => {
    const sources = new Map(entriesOf('sources').map(({ id, data }) => [id, data]));
    const cited = [
      ...[
        ...families,
        ...profiles,
        ...entriesOf('sequences'),
        ...entriesOf('guides'),
        ...entriesOf('plans'),
      ].flatMap(({ data }) => data.sources),
      ...entriesOf('statements').map(({ data }) => data.source),
    ];
    expect(cited.filter((id) => !sources.has(id))).toEqual([]);
    expect([...sources.keys()].filter((id) => !cited.includes(id))).toEqual([]);
    for (const { data } of sessions) expect(sources.get(data.source)?.date).toBe(data.date);
  });
});

describe('the size of the world', () => {
  it('is at least 30 profiles, 8 sessions on 3 benches, 6000 readings', () => {
    expect(profiles.length).toBeGreaterThanOrEqual(30);
    expect(sessions).toHaveLength(8);
    expect(new Set(sessions.map(({ data }) => data.bench)).size).toBe(3);
    const count = [...sheets.values()].reduce((sum, sheet) => sum + sheet.length, 0);
    expect(count).toBeGreaterThanOrEqual(6000);
  });

  it('measures every profile, and ten or more on two benches under like conditions', () => {
    const all = new Set(sessions.flatMap(({ id }) => [...measured(id)]));
    expect(all).toEqual(new Set(profiles.map(({ id }) => id)));
    const like = sessions.filter(({ data }) => data.load.ohms === 4 && data.supply.volts === 14.4);
    const twice = profiles.filter(
      ({ id }) =>
        new Set(like.filter((session) => measured(session.id).has(id)).map(({ data }) => data.bench)).size >=
        2,
    );
    expect(twice.length).toBeGreaterThanOrEqual(10);
  });
});

describe('codes', () => {
  it('fit the pattern of their family and are always quoted', () => {
    for (const { id, data, text } of profiles) {
      const family = families.find((each) => each.id === data.family);
      expect(data.code, id).toMatch(new RegExp(family?.data.code.pattern ?? '^$', 'u'));
      expect(text, id).toContain(`\ncode: "${data.code}"\n`);
    }
  });

  it('hold YAML traps, which the quotes disarm', () => {
    const unquoted = profiles.map(({ data }) => parse(data.code) as unknown);
    expect(unquoted.filter((value) => typeof value === 'number').length).toBeGreaterThanOrEqual(5);
  });

  it('differ after look-alikes are folded, except in one pair that says how to tell', () => {
    // The six pairs are common practice, no standard (see Unicode UTS #39 for nought and one); D, Q and L are
    // added to be strict, for seven strokes and worn screens.
    const alikeTo: Readonly<Record<string, string>> = {
      ...{ O: '0', D: '0', Q: '0', I: '1', L: '1' },
      ...{ S: '5', B: '8', Z: '2', G: '6' },
    };
    const folded = (code: string) => [...code.toUpperCase()].map((c) => alikeTo[c] ?? c).join('');
    const alike = profiles.flatMap((one) =>
      profiles
        .filter((other) => other.id > one.id && other.data.family === one.data.family)
        .filter((other) => folded(other.data.code) === folded(one.data.code))
        .map((other) => [one, other] as const),
    );
    expect(alike).toHaveLength(1);
    for (const [one, other] of alike) {
      expect(one.data.tellApart.map(({ from }) => from)).toEqual([other.id]);
      expect(other.data.tellApart.map(({ from }) => from)).toEqual([one.id]);
    }
  });
});

describe('families', () => {
  it('say of the hardware what the model has', () => {
    for (const model of modelFamilies) {
      const family = families.find(({ id }) => id === model.id)?.data;
      expect(family?.output.topology, model.id).toBe(model.unit.topology);
      expect(family?.output.ratedLoadOhms, model.id).toBe(model.ratedLoadOhms);
      expect(family?.volume, model.id).toEqual({
        lowestStep: model.unit.lowestStep,
        highestStep: model.unit.highestStep,
      });
    }
    expect(families).toHaveLength(modelFamilies.length);
  });

  it('cover each model line without gap or overlap', () => {
    const ranges = families.flatMap(({ data }) => data.fitment);
    for (const model of new Set(ranges.map((range) => range.model))) {
      const line = ranges.filter((range) => range.model === model).sort((a, b) => a.fromYear - b.fromYear);
      for (const [i, range] of line.entries()) {
        expect(range.toYear, model).toBeGreaterThanOrEqual(range.fromYear);
        if (i > 0) expect(range.fromYear, model).toBe((line[i - 1]?.toYear ?? 0) + 1);
      }
    }
  });

  it.each(families)('have a face that can be drawn: $id', ({ data: { face, identify } }) => {
    type Box = { left: number; top: number; right: number; bottom: number };
    const within = (inner: Box, outer: Box) =>
      inner.left >= outer.left &&
      inner.right <= outer.right &&
      inner.top >= outer.top &&
      inner.bottom <= outer.bottom;
    const apart = (a: Box, b: Box) =>
      a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
    const plate = { left: 0, top: 0, right: face.widthMm, bottom: face.heightMm };
    const { xMm, yMm, widthMm, heightMm } = face.screen;
    const screen = { left: xMm, top: yMm, right: xMm + widthMm, bottom: yMm + heightMm };
    expect(within(screen, plate)).toBe(true);
    const boxes = face.controls.map((control) => ({
      control,
      box: {
        left: control.xMm - control.widthMm / 2,
        right: control.xMm + control.widthMm / 2,
        top: control.yMm - control.heightMm / 2,
        bottom: control.yMm + control.heightMm / 2,
      },
    }));
    for (const [i, { control, box }] of boxes.entries()) {
      expect(within(box, plate), control.id).toBe(true);
      if (control.kind === 'touch-area')
        expect(within(box, screen) && face.screen.touch, control.id).toBe(true);
      else expect(apart(box, screen), control.id).toBe(true);
      for (const other of boxes.slice(i + 1)) expect(apart(box, other.box), control.id).toBe(true);
    }
    const ids = face.controls.map(({ id }) => id);
    expect(identify.every(({ control }) => control === undefined || ids.includes(control))).toBe(true);
  });
});

it('prose holds no bare numbers with electrical units', () => {
  const bare = /\d\s?(m?V|dB|k?Hz|m?A|m?W|m?Ω|volts?|amps?|watts?|ohms?|hertz|decibels?)\b/;
  for (const { id, body } of [...families, ...entriesOf('guides')]) {
    expect(body.trim().length, id).toBeGreaterThan(0);
    const withoutCited = body.replace(/:cited\[[^\]]*\]\{source=[a-z0-9-]+\}/g, '');
    expect(withoutCited.match(bare)?.[0], id).toBeUndefined();
  }
});
