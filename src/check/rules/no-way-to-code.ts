import type { Sequence } from '../../../schemas/index.ts';
import { type Finding, nearest } from '../../base/index.ts';
import type { Rule } from '../rule.ts';

export const noWayToCode: Rule = {
  id: 'no-way-to-code',
  title: 'Every sequence leads from its start to a state that shows the active code.',
  explanation:
    'A rider follows the steps from a dark screen. Each step must join two states that exist, use controls the face has, and one chain of steps must end at a state with “shows: active-code” that says where on the screen the code stands. A list of profiles is not such a state: it shows every profile the unit holds, not the active one.',
  severity: 'error',
  examples: [
    {
      title: 'a step to a state that is not there',
      file: 'sequences/moorlight-menu.yaml',
      good: 'to: active\n',
      bad: 'to: actve\n',
      foundAt: 'actve',
    },
  ],
  check: ({ answers: { base } }) => {
    const findings: Finding[] = [];
    for (const sequence of base.sequences.values()) {
      const report = (path: readonly (string | number)[], message: string, help: string): void => {
        findings.push({
          rule: 'no-way-to-code',
          severity: 'error',
          place: sequence.place(path),
          message,
          help,
          related: [],
        });
      };
      const data = sequence.data;
      const states = new Set(data.states.map((state) => state.id));
      const mention = (id: string, path: readonly (string | number)[]): void => {
        if (states.has(id)) return;
        const guess = nearest(id, states);
        report(
          path,
          `There is no state “${id}” in this sequence.`,
          guess ? `Did you mean “${guess}”?` : `Its states are: ${[...states].join(', ')}.`,
        );
      };
      mention(data.start, ['start']);
      data.transitions.forEach((step, index) => {
        mention(step.from, ['transitions', index, 'from']);
        mention(step.to, ['transitions', index, 'to']);
      });
      data.states.forEach((state, index) => {
        if (data.states.findIndex((one) => one.id === state.id) !== index) {
          report(
            ['states', index, 'id'],
            `The state “${state.id}” stands here twice.`,
            'Give each state its own id.',
          );
        }
        state.recovery.forEach((way, wayIndex) => {
          mention(way.goTo, ['states', index, 'recovery', wayIndex, 'goTo']);
        });
        if ((state.shows === 'active-code') !== (state.activeCodeAt !== undefined)) {
          report(
            ['states', index, state.activeCodeAt === undefined ? 'shows' : 'activeCodeAt'],
            state.activeCodeAt === undefined
              ? `The state “${state.id}” shows the active code but does not say where on the screen.`
              : `The state “${state.id}” says where the active code stands but does not show it.`,
            'Give both “shows: active-code” and “activeCodeAt: …”, or neither.',
          );
        }
      });
      const family = base.families.get(data.family);
      if (family) {
        const controls = new Set(family.data.face.controls.map((control) => control.id));
        data.transitions.forEach((step, index) => {
          for (const { id, path } of controlsOf(step.action)) {
            if (controls.has(id)) continue;
            const guess = nearest(id, controls);
            report(
              ['transitions', index, 'action', ...path],
              `The face of “${family.data.name}” has no control “${id}”.`,
              guess ? `Did you mean “${guess}”?` : `Its controls are: ${[...controls].join(', ')}.`,
            );
          }
        });
      }
      const terminal = data.states.filter((state) => state.shows === 'active-code');
      if (terminal.length === 0) {
        if (data.states.some((state) => state.activeCodeAt !== undefined)) continue;
        report(
          ['states'],
          'No state of this sequence shows the active code.',
          'Add “shows: active-code” and “activeCodeAt: …” to the state where the rider reads it.',
        );
        continue;
      }
      // A step that leads nowhere is named already; what it cuts off is its echo.
      if (findings.some((one) => one.place.file === sequence.file)) continue;
      const reached = reachable(data);
      if (!terminal.some((state) => reached.has(state.id))) {
        const stuck = [...reached].filter((id) => !data.transitions.some((step) => step.from === id));
        report(
          ['start'],
          `The steps from “${data.start}” never come to a state that shows the active code${
            stuck.length > 0 ? `: they end at “${stuck.join('”, “')}”` : ''
          }.`,
          'Add the missing step, or correct a “from” or “to”.',
        );
      }
    }
    return findings;
  },
};

/** Every state that some chain of steps leads to. */
function reachable(sequence: Sequence): Set<string> {
  const reached = new Set([sequence.start]);
  for (const id of reached) {
    for (const step of sequence.transitions) if (step.from === id) reached.add(step.to);
  }
  return reached;
}

function controlsOf(
  action: Sequence['transitions'][number]['action'],
): { id: string; path: (string | number)[] }[] {
  if (action.kind === 'hold') return action.controls.map((id, index) => ({ id, path: ['controls', index] }));
  if (action.kind === 'press' || action.kind === 'tap' || action.kind === 'turn') {
    return [{ id: action.control, path: ['control'] }];
  }
  return [];
}
