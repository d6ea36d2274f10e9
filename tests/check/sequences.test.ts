import { describe, expect, test } from 'vitest';
import { edit, told } from './told.ts';

const menu = 'sequences/moorlight-menu.yaml';
const touch = 'sequences/fellside-touch.yaml';
const lastSay = '    say: Press BACK once.\n';
const lastAction = 'action: { kind: press, control: back }';

/** The menu sequence with steps added at its end. */
const withSteps = (...steps: readonly string[]) =>
  edit(menu, lastSay, `${lastSay}${steps.map((step) => `  - { ${step}, say: Do it. }\n`).join('')}`);
const step = (from: string, to: string, action: string) => `from: ${from}, to: ${to}, action: { ${action} }`;

describe('steps a rider cannot tell apart', () => {
  const pairs = [
    ['kind: wait, leastSeconds: 1, mostSeconds: 2', 'kind: wait, leastSeconds: 5, mostSeconds: 9', true],
    ['kind: ignition, position: accessory', 'kind: ignition, position: accessory', true],
    ['kind: ignition, position: accessory', 'kind: ignition, position: "off"', false],
    ['kind: press, control: menu', 'kind: press, control: menu, times: 1', true],
    ['kind: press, control: menu', 'kind: press, control: menu, times: 2', false],
    ['kind: press, control: menu', 'kind: press, control: volume', false],
    [
      'kind: turn, control: volume, direction: clockwise, clicks: 2',
      'kind: turn, control: volume, direction: clockwise, clicks: 2',
      true,
    ],
    [
      'kind: turn, control: volume, direction: clockwise, clicks: 2',
      'kind: turn, control: volume, direction: anticlockwise, clicks: 2',
      false,
    ],
    [hold('[menu, back]', 'screen-changes', 3, 8), hold('[back, menu]', 'screen-changes', 6, 12), true],
    [hold('[menu]', 'screen-changes', 3, 5), hold('[menu]', 'screen-changes', 8, 12), false],
    [hold('[menu]', 'screen-changes', 3, 8), hold('[menu]', 'prompt-shown', 3, 8), false],
    [hold('[menu]', 'screen-changes', 3, 8), hold('[menu]', 'any-time', 3, 8), true],
    [hold('[menu]', 'screen-changes', 3, 8), hold('[menu, back]', 'screen-changes', 3, 8), false],
  ] as const;

  test.each(pairs)('%s | %s', async (a, b, areAlike) => {
    const findings = await told(withSteps(step('list', 'dark', a), step('list', 'active', b)));
    expect(findings.filter((one) => one.startsWith('sequence-ambiguous'))).toHaveLength(areAlike ? 1 : 0);
  });

  test('a step that stands there twice is called that', async () => {
    expect(await told(withSteps(step('list', 'active', 'kind: press, control: back')))).toEqual([
      `sequence-ambiguous ${menu}: This step from “list” to “active” stands here twice.`,
    ]);
  });
});

function hold(controls: string, end: string, least: number, most: number): string {
  return `kind: hold, controls: ${controls}, begin: any-time, end: ${end}, leastSeconds: ${least}, mostSeconds: ${most}`;
}

describe('holds and waits', () => {
  const ends = [
    [
      hold('[menu]', 'screen-changes', 5, 5),
      'This hold takes at least 5 s, and is to be given up after 5 s.',
    ],
    [
      hold('[menu]', 'screen-changes', 0, 0),
      'This hold takes at least 0 s, and is to be given up after 0 s.',
    ],
    [
      hold('[menu]', 'any-time', 0, 9),
      'This hold may end at any time, even at once: nothing says when to let go.',
    ],
    [hold('[menu]', 'any-time', 5, 9), undefined],
    [hold('[menu]', 'screen-changes', 0, 60), undefined],
    ['kind: wait, leastSeconds: 20, mostSeconds: 300', undefined],
    [
      'kind: wait, leastSeconds: 20, mostSeconds: 301',
      'A wait of up to 301 s is longer than a rider will keep up (300 s).',
    ],
    [
      'kind: hold, controls: [menu], begin: prompt-gone, end: with-ignition, leastSeconds: 1, mostSeconds: 9',
      'This hold is to end (with ignition) before it begins (prompt gone).',
    ],
    [
      'kind: hold, controls: [menu], begin: screen-changes, end: screen-changes, leastSeconds: 1, mostSeconds: 9',
      undefined,
    ],
  ] as const;

  test.each(ends)('%s', async (action, message) => {
    const findings = await told(withSteps(step('list', 'dark', action)));
    expect(findings.filter((one) => one.startsWith('endless-hold'))).toEqual(
      message === undefined ? [] : [`endless-hold ${menu}: ${message}`],
    );
  });
});

describe('states', () => {
  test('a recovery is a way to a state as well', async () => {
    const led = edit(
      menu,
      'advice: The key came too late. Turn the ignition off and begin again.\n        goTo: dark',
      'advice: Wait.\n        goTo: radio',
    );
    const state = edit(
      menu,
      '  - id: active\n',
      '  - id: radio\n    see: The radio.\n    recovery:\n      - { seen: It plays on., advice: Begin again., goTo: dark }\n  - id: active\n',
    );
    expect(await told(state)).toEqual([
      `sequence-unreachable ${menu}: No step and no recovery leads to the state “radio”.`,
    ]);
    expect(await told(led, state)).toEqual([]);
  });

  test('of a stretch that is cut off, the first state is named', async () => {
    const states = ['c', 'b', 'a'].map((id) => `  - { id: ${id}, see: A page. }\n`).join('');
    const stretch = edit(menu, '  - id: active\n', `${states}  - id: active\n`);
    const press = (from: string, to: string) => step(from, to, 'kind: press, control: menu');
    const inRow = withSteps(press('a', 'b'), press('b', 'c'), press('c', 'active'));
    expect(await told(stretch, inRow)).toEqual([
      `sequence-unreachable ${menu}: No step and no recovery leads to the state “a”.`,
    ]);
    const inCircle = withSteps(press('a', 'b'), press('b', 'c'), press('c', 'a'));
    expect(await told(stretch, inCircle)).toEqual([
      `sequence-unreachable ${menu}: No step and no recovery leads to the state “c”.`,
    ]);
  });

  test('a step that leads astray is one finding, and the rest its echo', async () => {
    expect(await told(edit(menu, 'from: dark\n    to: list', 'from: dark\n    to: dark'))).toEqual([
      `no-way-to-code ${menu}: The steps from “dark” never come to a state that shows the active code.`,
    ]);
  });

  test('a list at the end of one way is named where another way leads on', async () => {
    const second = edit(
      menu,
      '  - id: active\n',
      '  - id: second-list\n    see: The list again.\n    shows: profile-list\n    notActiveCode: [Its lines.]\n  - id: active\n',
    );
    expect(await told(second, withSteps(step('list', 'second-list', 'kind: press, control: menu')))).toEqual([
      `list-shown-as-code ${menu}: The steps end at “second-list”, which shows the list of profiles and not the active code.`,
    ]);
  });

  test('a hold that may fail is answered where it leads, and not at the start', async () => {
    const recovery =
      '    recovery:\n      - seen: The radio plays on.\n        advice: The key was let go too early. Hold it again.\n        goTo: radio\n';
    const unanswered = [
      `sequence-dead-end ${touch}: This hold may come to nothing after 10 s, and “active” does not say what to do then.`,
    ];
    const without = edit(touch, recovery, '');
    const atStart = edit(touch, '    see: The radio plays.\n', `    see: The radio plays.\n${recovery}`);
    expect(await told(without)).toEqual(unanswered);
    expect(await told(without, atStart)).toEqual(unanswered);
  });

  test('actions that are counted can be missed; single ones cannot', async () => {
    const counted = (action: string) => told(withSteps(step('list', 'active', action)));
    expect(await counted('kind: press, control: menu')).toEqual([]);
    expect(await counted('kind: press, control: menu, times: 3')).toEqual([
      `sequence-dead-end ${menu}: This press of 3 times can be miscounted, and “active” does not say what to do then.`,
    ]);
    expect(await counted('kind: turn, control: volume, direction: clockwise, clicks: 9')).toEqual([
      `sequence-dead-end ${menu}: This turn by 9 clicks can be miscounted, and “active” does not say what to do then.`,
    ]);
    expect(await told(withSteps(step('list', 'dark', 'kind: press, control: menu, times: 3')))).toEqual([]);
  });
});

describe('controls', () => {
  const uses = [
    ['kind: tap, control: menu', '“menu” is a key and cannot be tapped.'],
    ['kind: turn, control: menu, direction: clockwise, clicks: 1', '“menu” is a key and cannot be turned.'],
    ['kind: tap, control: volume', '“volume” is a knob and cannot be tapped.'],
    ['kind: press, control: volume', undefined],
    ['kind: turn, control: volume, direction: clockwise, clicks: 1', undefined],
    [hold('[volume, menu]', 'screen-changes', 1, 5), undefined],
    [hold('[volume, knob]', 'screen-changes', 1, 5), 'The face of “Moorlight” has no control “knob”.'],
  ] as const;

  test.each(uses)('%s', async (action, message) => {
    expect(await told(withSteps(step('list', 'dark', action)))).toEqual(
      message === undefined ? [] : [`unknown-control ${menu}: ${message}`],
    );
  });

  test('a press on an area of the screen is a tap, and an area needs a screen that answers to touch', async () => {
    expect(
      await told(
        edit('families/moorlight.md', 'label: BACK, kind: key', 'label: BACK, kind: touch-area'),
        edit(
          'families/moorlight.md',
          'display: dot-matrix, touch: false',
          'display: dot-matrix, touch: true',
        ),
      ),
    ).toEqual([`unknown-control ${menu}: “back” is a touch area and cannot be pressed.`]);
    expect(
      await told(
        edit('families/moorlight.md', 'label: BACK, kind: key', 'label: BACK, kind: touch-area'),
        edit(menu, lastAction, 'action: { kind: tap, control: back }'),
      ),
    ).toEqual([
      'unknown-control families/moorlight.md: The screen is said not to answer to touch, yet “back” is a touch area of it.',
    ]);
  });
});

describe('cautions', () => {
  const cautions = 'cautions: [parked, engine-off-indoors, look-only]\nstart: dark';

  test('all that lack are told at once, each with its reason', async () => {
    expect(await told(edit(menu, cautions, 'cautions: [hearing]\nstart: dark'))).toEqual([
      `missing-caution ${menu}: These cautions lack “parked”, because every way to the service screen is walked at a standstill; “look-only”, because service screens hold settings and resets as well; “engine-off-indoors”, because the ignition is turned on.`,
    ]);
  });

  test('the battery is minded where the ignition is on for more than a minute', async () => {
    const wait = (most: number) =>
      withSteps(step('list', 'dark', `kind: wait, leastSeconds: 10, mostSeconds: ${most}`));
    expect(await told(wait(45))).toEqual([]);
    expect(await told(wait(46))).toEqual([
      `missing-caution ${menu}: These cautions lack “battery-drain”, because the ignition is on, and the steps may take longer than 60 s.`,
    ]);
  });

  test('a way that leaves the ignition alone needs no word on the engine', async () => {
    expect(
      await told(
        edit(touch, 'cautions: [parked, engine-off-indoors, look-only]', 'cautions: [parked, look-only]'),
      ),
    ).toEqual([]);
  });

  test('a guide is held to what its text speaks of, over line ends and inside emphasis', async () => {
    const text = 'Read the code under the word ACTIVE, not a line of the list.';
    const guide = 'guides/reading-a-code.md';
    expect(await told(edit(guide, text, `${text} Keep *bridged\noutputs* off ground.`))).toEqual([
      `missing-caution ${guide}: These cautions lack “bridged-outputs”, because the text speaks of bridged outputs.`,
    ]);
    expect(await told(edit(guide, text, `${text} A confused reader looks twice.`))).toEqual([]);
  });
});
