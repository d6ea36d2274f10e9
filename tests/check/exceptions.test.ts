/** Findings set aside by entries in exceptions/, and what cannot be set aside. */
import { expect, test } from 'vitest';
import { checkContent } from '../../src/check/index.ts';
import { editedExample, type TextEdit } from './example-base.ts';

const slip: TextEdit = {
  file: 'outputs/2025-05-shed/readings.csv',
  good: 'FL,16,1000,1.5841',
  bad: 'FL,16,1000,1.5481',
};
const misspelt: TextEdit = {
  file: 'statements/letter-rear.yaml',
  good: 'source: rider-letter',
  bad: 'source: riders-leter',
};

function exception(fields: Readonly<Record<string, string>>, id = 'known'): TextEdit {
  const all = {
    rule: 'sessions-disagree',
    file: slip.file,
    reason: 'The lead was loose.',
    by: 'Bench lead',
    until: '2026-12-31',
    ...fields,
  };
  const bad = Object.entries(all)
    .map(([name, value]) => `${name}: ${value}\n`)
    .join('');
  return { file: `exceptions/${id}.yaml`, good: '', bad };
}

async function found(edits: readonly TextEdit[], today = '2026-11-01') {
  const { findings, setAside } = await checkContent(editedExample(edits), { today });
  return {
    findings: findings.map(({ rule, place }) => `${rule} ${place.file}:${place.line}`),
    messages: findings.map(({ message, help }) => `${message} ${help}`),
    setAside: setAside.map(({ rule, place }) => `${rule} ${place.file}:${place.line}`),
  };
}

const slipFinding = 'sessions-disagree outputs/2025-05-shed/readings.csv:17';

test.each([
  ['every finding of a rule in a file', {}],
  ['by a text of the line, such as the row', { about: '"moorlight/km-4417,FL,16,1000"' }],
  ['by the value found fault with', { about: '"1.5481"' }],
])('a finding is set aside: %s', async (_, fields) => {
  expect(await found([slip, exception(fields)])).toEqual({
    findings: [],
    messages: [],
    setAside: [slipFinding],
  });
});

test('without it the finding is there', async () => {
  expect((await found([slip])).findings).toEqual([slipFinding]);
});

test.each([
  [
    'another line',
    { about: '"FL,17,1000"' },
    3,
    'No finding of “sessions-disagree” in outputs/2025-05-shed/readings.csv points at a line with “FL,17,1000”.',
  ],
  [
    'another file',
    { file: 'outputs/2026-02-loft/readings.csv' },
    1,
    'There is no finding of “sessions-disagree” in outputs/2026-02-loft/readings.csv to set aside.',
  ],
  [
    'another rule',
    { rule: 'repeated-row' },
    1,
    'There is no finding of “repeated-row” in outputs/2025-05-shed/readings.csv to set aside.',
  ],
  [
    'no rule at all',
    { rule: 'session-disagree' },
    1,
    'There is no rule “session-disagree”. Did you mean “sessions-disagree”?',
  ],
])('an exception to %s sets nothing aside and is named itself', async (_, fields, line, message) => {
  const edit = exception(fields);
  const at = edit.bad.split('\n').findIndex((one) => one.startsWith(line === 3 ? 'about' : 'rule')) + 1;
  const { findings, messages, setAside } = await found([slip, edit]);
  expect(findings).toEqual([`unused-exception exceptions/known.yaml:${at}`, slipFinding]);
  expect(messages[0]).toContain(message);
  expect(setAside).toEqual([]);
});

test.each([
  ['2026-12-30', 0],
  ['2026-12-31', 0],
  ['2027-01-01', 2],
])('on %s an exception until 2026-12-31 leaves %d findings', async (today, count) => {
  const { findings } = await found([slip, exception({})], today);
  expect(findings).toEqual(count === 0 ? [] : ['expired-exception exceptions/known.yaml:5', slipFinding]);
});

test('the day of the run comes from the caller: without one nothing has expired', async () => {
  const { findings } = await checkContent(editedExample([slip, exception({ until: '2001-01-01' })]));
  expect(findings).toEqual([]);
});

test('of several exceptions to one finding each counts as used; each sets aside its own', async () => {
  const both = [exception({}, 'one'), exception({ about: '"1.5481"' }, 'two')];
  expect((await found([slip, ...both])).findings).toEqual([]);
  const others = [exception({}), exception({ rule: 'dangling-link', file: misspelt.file }, 'letter')];
  expect((await found([slip, misspelt, ...others])).setAside).toEqual([
    slipFinding,
    'dangling-link statements/letter-rear.yaml:1',
  ]);
});

test.each([
  ['schema', 'by: Bench lead', 'by:'],
  ['unknown-key', 'by: Bench lead', 'by: Bench lead\nbye: x'],
  ['syntax', 'by: Bench lead', 'by: "Bench lead'],
  ['dangling-link', 'by: Bench lead', 'by: Bench lead\nsources: [nowhere]'],
])('what is wrong in exceptions/ cannot be set aside: %s', async (rule, from, to) => {
  const broken = exception({}, 'broken');
  const file = { ...broken, bad: broken.bad.replace(from, to) };
  const silencer = exception({ rule, file: 'exceptions/broken.yaml' }, 'silencer');
  const { findings } = await found([file, silencer]);
  expect(findings.filter((one) => one.startsWith(`${rule} exceptions/broken.yaml`))).toHaveLength(1);
  expect(findings).toContain('unused-exception exceptions/silencer.yaml:1');
});

test('nor can the rules about exceptions', async () => {
  const unused = exception({}, 'unused');
  const silencer = exception({ rule: 'unused-exception', file: 'exceptions/unused.yaml' }, 'silencer');
  const { findings, messages } = await found([unused, silencer]);
  expect(findings).toEqual([
    'unused-exception exceptions/silencer.yaml:1',
    'unused-exception exceptions/unused.yaml:1',
  ]);
  expect(messages[0]).toContain('No exception can be made to this.');
});

test('an exception needs a reason, a role and a last day', async () => {
  for (const field of ['reason', 'by', 'until', 'rule', 'file']) {
    const edit = exception({});
    const bad = edit.bad.replace(new RegExp(`^${field}: .*\n`, 'm'), '');
    const { messages } = await found([{ ...edit, bad }]);
    expect(messages, field).toEqual([
      `This exception lacks the field “${field}”. Add a line “${field}: …” there.`,
    ]);
  }
});
