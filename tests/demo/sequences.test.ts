import { describe, expect, it } from 'vitest';
import { entriesOf } from './entries.ts';

const families = new Map(entriesOf('families').map(({ id, data }) => [id, data]));
const sequences = entriesOf('sequences');

it('leads into every family, and into one of them two ways', () => {
  const counts = [...families.keys()].map((id) => sequences.filter(({ data }) => data.family === id).length);
  expect(counts.sort()).toEqual([1, 1, 1, 1, 2]);
});

it('knows holds from ignition to prompt, holds from the prompt on, and ways without a hold', () => {
  const holds = sequences.map(({ data }) =>
    data.transitions.flatMap(({ action }) => (action.kind === 'hold' ? [action] : [])),
  );
  expect(holds.flat().some((hold) => hold.begin === 'with-ignition' && hold.end === 'prompt-shown')).toBe(
    true,
  );
  expect(holds.flat().some((hold) => hold.begin === 'prompt-shown' && hold.end === 'prompt-gone')).toBe(true);
  expect(holds.some((each) => each.length === 0)).toBe(true);
});

describe.each(sequences)('$id', ({ data }) => {
  const states = new Map(data.states.map((state) => [state.id, state]));

  it('uses the controls its family has, each in the way it can be used', () => {
    const kinds = new Map(families.get(data.family)?.face.controls.map(({ id, kind }) => [id, kind]));
    for (const { action } of data.transitions) {
      if (action.kind === 'tap') expect(kinds.get(action.control)).toBe('touch-area');
      if (action.kind === 'press') expect(kinds.get(action.control)).toMatch(/^(key|knob)$/);
      if (action.kind === 'turn') expect(kinds.get(action.control)).toBe('knob');
      if (action.kind === 'hold')
        for (const control of action.controls) expect(kinds.has(control)).toBe(true);
    }
  });

  it('goes one way only from a state by an action', () => {
    const ways = data.transitions.map(({ from, action }) => `${from} ${JSON.stringify(action)}`);
    expect(new Set(ways).size).toBe(ways.length);
  });

  it('reaches every state from the start, and the active code from every state', () => {
    const reach = (from: string): Set<string> => {
      const seen = new Set([from]);
      for (const id of seen) for (const step of data.transitions) if (step.from === id) seen.add(step.to);
      return seen;
    };
    expect(reach(data.start)).toEqual(new Set(states.keys()));
    const ends = data.states.filter(({ shows }) => shows === 'active-code');
    expect(ends.map(({ activeCodeAt }) => activeCodeAt !== undefined)).toEqual([true]);
    for (const id of states.keys()) expect(reach(id).has(ends[0]?.id ?? '')).toBe(true);
    expect(data.transitions.some(({ from }) => from === ends[0]?.id)).toBe(false);
  });

  it('says at each list that it is not the active code, and how to recover at every step', () => {
    expect(data.states.some(({ shows }) => shows === 'profile-list')).toBe(true);
    for (const state of data.states) {
      if (state.shows === 'profile-list') expect(state.notActiveCode.length).toBeGreaterThan(0);
      if (state.shows !== 'active-code') expect(state.recovery.length).toBeGreaterThan(0);
      for (const { goTo } of state.recovery) expect(states.has(goTo)).toBe(true);
    }
  });

  it('opens with the cautions for a look at a parked machine', () => {
    expect(data.cautions).toEqual(
      expect.arrayContaining(['parked', 'engine-off-indoors', 'look-only', 'battery-drain']),
    );
  });
});
