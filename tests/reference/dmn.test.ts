/**
 * What we write as DMN, held to two others: dmn-moddle, a reader of DMN 1.3 made from OMG’s own model of it, must read it
 * without a warning and write it back unchanged; and the FEEL library must answer from the file as from the table.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { DmnModdle, type ModdleElement } from 'dmn-moddle';
import fc from 'fast-check';
import { date } from 'feelin';
import { describe, expect, test } from 'vitest';
import {
  decideDmn,
  exportDmn,
  feelName,
  idOfFeelName,
  readDmn,
  tableOfDecision,
} from '../../src/tables/dmn/index.ts';
import { gridOf, isAnalysable } from '../../src/tables/grid/cut-table.ts';
import { sample } from '../../src/tables/grid/grid.ts';
import {
  aggregations,
  evaluateTable,
  type Given,
  hitPolicies,
  readTable,
  type Table,
  type TableInput,
  type Value,
  type ValueType,
} from '../../src/tables/index.ts';
import { dateOf } from '../../src/tables/sets/days.ts';

const inputTypes: readonly { readonly type: ValueType; readonly tests: readonly string[] }[] = [
  {
    type: { kind: 'number', unit: 'V', least: 0, most: 12.5 },
    tests: ['-', '< 4.2', '>= 1', '[1..3)', '(2..4]', '3', '1, 2.5', 'not(< 2)', 'null', '0.0000001'],
  },
  { type: { kind: 'number', whole: true, least: 0 }, tests: ['-', '<= 20', '> 20', '[10..30]', 'not(15)'] },
  { type: { kind: 'number' }, tests: ['-', '< -3', '-3', '>= 0.5'] },
  {
    type: { kind: 'choice', values: ['fixed', 'a "b"', 'x, y', 'é\\ü', '< 3', '日本'] },
    tests: ['-', '"fixed"', '"a \\"b\\""', 'not("x, y")', '"é\\\\ü", "< 3"', 'null', '"日本"'],
  },
  { type: { kind: 'yes-no' }, tests: ['-', 'true', 'false', 'not(true)'] },
  {
    type: { kind: 'date', least: '2020-01-01' },
    tests: ['-', '< date("2026-03-14")', '[date("2026-01-01")..date("2026-02-28")]', 'null'],
  },
  { type: { kind: 'text' }, tests: ['-', '"any text"', 'not("other")'] },
];

const outputTypes: readonly { readonly type: ValueType; readonly values: readonly Value[] }[] = [
  {
    type: { kind: 'choice', values: ['keep', 'keep "it"', 'réflash & <more>'] },
    values: ['keep', 'keep "it"', 'réflash & <more>'],
  },
  { type: { kind: 'number', unit: 'dB' }, values: [1, -2.5, 0.0000001, 1e21, 0.1] },
  { type: { kind: 'yes-no' }, values: [true, false] },
  { type: { kind: 'text' }, values: ['', 'line\nbreak\tand \\ “quotes”', '=1+1', ']]>', '  blanks  '] },
  { type: { kind: 'date' }, values: ['2026-03-14', '2027-01-01'] },
];

const ids = ['clean-volts', 'in', 'date-of-flash', '10-hz', 'boost', 'not-known', 'if', 'rear-wanted-2'];

const arbitraryTable: fc.Arbitrary<Table> = fc
  .record({
    hitPolicy: fc.constantFrom(...hitPolicies),
    aggregation: fc.option(fc.constantFrom(...aggregations)),
    names: fc.uniqueArray(fc.constantFrom(...ids), { minLength: 1, maxLength: 4 }),
    kinds: fc.array(fc.nat(inputTypes.length - 1), { minLength: 4, maxLength: 4 }),
    missing: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
    outputs: fc.array(fc.nat(outputTypes.length - 1), { minLength: 1, maxLength: 2 }),
    otherwise: fc.boolean(),
    rows: fc.array(fc.array(fc.nat(1000), { minLength: 6, maxLength: 6 }), { minLength: 1, maxLength: 6 }),
  })
  .map(({ hitPolicy, aggregation, names, kinds, missing, outputs, otherwise, rows }) => {
    const summed = hitPolicy === 'collect' && aggregation !== null;
    // Only numbers have a sum (DMN 1.3, 8.2.11), and only of one output.
    const outputKinds = (summed ? [1] : outputs).map((kind) => outputTypes[kind] ?? fail());
    const columns = names.map((_, index) => inputTypes[kinds[index] ?? 0] ?? fail());
    const pick = <T>(list: readonly T[], at: number | undefined): T =>
      list[(at ?? 0) % list.length] ?? fail();
    const { table, faults } = readTable({
      name: 'What to do?',
      hitPolicy,
      aggregation: summed ? aggregation : undefined,
      inputs: names.map(
        (id, index): TableInput => ({
          id,
          label: `The ${id}`,
          type: columns[index]?.type ?? fail(),
          mayBeMissing: missing[index] ?? false,
        }),
      ),
      outputs: outputKinds.map(({ type, values }, index) => ({
        id: `out-${index}`,
        label: `Answer <${index}>`,
        type,
        priorities: values,
        otherwise: otherwise ? values[0] : undefined,
      })),
      rules: rows.map((row, index) => ({
        id: `rule-${index}`,
        tests: columns.map(({ tests }, column) => pick(tests, row[column])),
        results: outputKinds.map(({ values }, column) => pick(values, row[4 + column])),
      })),
    });
    return table ?? fail(JSON.stringify(faults));
  });

function fail(why = 'out of range'): never {
  throw new Error(why);
}

/** Values that reach every piece of the table, and so every way its tests can turn out, an input at a time. */
function* pointsOf(table: Table): Generator<Given> {
  const grid = gridOf(table);
  const value = (column: number, piece: number): Value => {
    const one = grid[column]?.pieces[piece % (grid[column]?.pieces.length ?? 1)];
    const taken = one ? sample(one) : null;
    return table.inputs[column]?.type.kind === 'date' && typeof taken === 'number' ? dateOf(taken) : taken;
  };
  for (const [column, { pieces }] of grid.entries()) {
    for (const piece of pieces.keys()) {
      for (const shift of [0, 1, 2]) {
        yield Object.fromEntries(
          table.inputs.map(({ id }, at) => [id, value(at, at === column ? piece : piece + shift + at)]),
        );
      }
    }
  }
  yield {};
}

async function read(xml: string) {
  const { rootElement, warnings } = await new DmnModdle().fromXML(xml);
  return { rootElement, warnings };
}

describe('tables of every kind, written and read again', () => {
  test('read by dmn-moddle without a warning, and written back as it was', async () => {
    await fc.assert(
      fc.asyncProperty(arbitraryTable, async (table) => {
        const xml = await exportDmn([
          { id: 'what-to-do', name: table.name, table, says: { 'rule-0': 'So & so.' } },
        ]);
        const { rootElement, warnings } = await read(xml);
        expect(warnings).toEqual([]);
        const again = await new DmnModdle().toXML(rootElement, { format: true });
        expect(again.xml.trim()).toBe(xml.trim());
        const [decision] = (rootElement.get('drgElement') as ModdleElement[]).filter(
          ({ $type }) => $type === 'dmn:Decision',
        );
        expect(decision?.get('decisionLogic')).toMatchObject({
          $type: 'dmn:DecisionTable',
          hitPolicy: table.hitPolicy.toUpperCase(),
        });
      }),
      { numRuns: 40 },
    );
  });

  test('the same answers, from the table read again and from the file by FEEL alone', async () => {
    let compared = 0;
    await fc.assert(
      fc.asyncProperty(arbitraryTable, async (table) => {
        expect(isAnalysable(table)).toBe(true);
        const file = readDmn(await exportDmn([{ id: 'what-to-do', name: table.name, table }]));
        const [decision] = file.decisions;
        if (!decision) throw new Error('no decision');
        const { table: again, faults, beyond } = tableOfDecision(file, decision);
        expect({ faults, beyond }).toEqual({ faults: [], beyond: undefined });
        if (!again) throw new Error('no table');
        expect(again.inputs.map(({ id, ...rest }) => ({ ...rest, id: idOfFeelName(id) }))).toMatchObject(
          table.inputs.map(({ id, label, type }) => ({ id, label, type })),
        );
        for (const given of pointsOf(table)) {
          const expected = evaluateTable(table, given);
          const answers = expected.answers.map((answer) => named(answer));
          const givenByName = named(given);
          expect(evaluateTable(again, givenByName)).toEqual({ ...expected, answers });
          const dates = table.inputs.filter(({ type }) => type.kind === 'date').map(({ id }) => feelName(id));
          const feel = Object.fromEntries(
            Object.entries(givenByName).map(([name, value]) => [
              name,
              dates.includes(name) && typeof value === 'string' ? date(value) : value,
            ]),
          );
          expect(decideDmn(file, decision, feel)).toMatchObject({
            answers,
            rules: expected.rules,
            broken: expected.broken,
          });
          compared += 1;
        }
      }),
      { numRuns: 40 },
    );
    expect(compared).toBeGreaterThan(500);
  });

  function named<T>(values: Readonly<Record<string, T>>): Record<string, T> {
    return Object.fromEntries(Object.entries(values).map(([id, value]) => [feelName(id), value]));
  }
});

test('names come back: every id of lower-case words', () => {
  const word = fc.stringMatching(/^[a-z0-9]{1,6}$/);
  fc.assert(
    fc.property(fc.array(word, { minLength: 1, maxLength: 4 }), (words) => {
      const id = words.join('-');
      expect(idOfFeelName(feelName(id))).toBe(id);
      expect(feelName(id)).toMatch(/^[a-z_][a-z0-9 ]*$/);
    }),
  );
});

describe('our worked files in the words of dmn-moddle', () => {
  const folder = new URL('../tables/dmn-files/', import.meta.url);
  // dmn-moddle speaks DMN 1.3; what is in these files is the same in all four versions but for the namespace.
  const toDmn13 = (text: string): string =>
    text.replace(
      /https?:\/\/www\.omg\.org\/spec\/DMN\/(20180521|20211108|20230324)\/MODEL\//g,
      'https://www.omg.org/spec/DMN/20191111/MODEL/',
    );

  test.each(readdirSync(folder).filter((one) => one.endsWith('.dmn') && !one.startsWith('plain')))(
    '%s: no warnings, and the same tables',
    async (name) => {
      const text = readFileSync(new URL(name, folder), 'utf8');
      const { rootElement, warnings } = await read(toDmn13(text));
      expect(warnings).toEqual([]);
      const theirs = (rootElement.get('drgElement') as ModdleElement[]).filter(
        ({ $type }) => $type === 'dmn:Decision',
      );
      const ours = readDmn(text).decisions;
      expect(ours.map(({ id }) => id)).toEqual(theirs.map(({ id }) => id));
      for (const [index, { logic }] of ours.entries()) {
        const other = theirs[index]?.get('decisionLogic') as ModdleElement;
        if (logic.kind === 'expression') {
          expect(other.get('text')).toBe(logic.text);
          continue;
        }
        expect(logic.hitPolicy.toUpperCase()).toBe(other.get('hitPolicy'));
        const texts = (rule: ModdleElement, part: string) =>
          (rule.get(part) as ModdleElement[]).map((one) =>
            ((one.get('text') as string | undefined) ?? '').trim(),
          );
        expect(
          logic.rules.map(({ tests, results }) =>
            [tests, results].map((all) => all.map(({ text: one }) => one)),
          ),
        ).toEqual(
          (other.get('rule') as ModdleElement[]).map((rule) => [
            texts(rule, 'inputEntry').map((one) => (one === '' ? '-' : one)),
            texts(rule, 'outputEntry'),
          ]),
        );
      }
    },
  );
});
