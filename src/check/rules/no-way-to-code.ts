import type { Sequence } from '../../../schemas/index.ts';
import { type Base, type Finding, nearest } from '../../base/index.ts';
import type { Rule } from '../rule.ts';
import { reachedStates, statesWithoutStep } from '../sequence-ways.ts';

export const noWayToCode: Rule = {
  id: 'no-way-to-code',
  title: 'Every unit has a sequence, and each leads from its start to a state that shows the active code.',
  explanation:
    'A rider follows the steps from a dark screen. Each step must join two states that exist, and one chain of steps must end at a state with “shows: active-code” that says where on the screen the code stands. A unit with profiles and no sequence at all has codes that nobody can read.',
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
  check: ({ answers: { base }, readerFindings }) => {
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
        if (state.shows === 'profile-list') return;
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
      const terminal = data.states.filter((state) => state.shows === 'active-code');
      if (terminal.length === 0) {
        if (data.states.some((state) => state.activeCodeAt !== undefined) || endsAtList(data)) continue;
        report(
          ['states'],
          'No state of this sequence shows the active code.',
          'Add “shows: active-code” and “activeCodeAt: …” to the state where the rider reads it.',
        );
        continue;
      }
      // A step that leads nowhere is named already; what it cuts off is its echo.
      if (findings.some((one) => one.place.file === sequence.file)) continue;
      const reached = reachedStates(data, 'steps-only');
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
    findings.push(...unitsWithoutSequence(base, readerFindings));
    return findings;
  },
};

/** Whether the steps end at a list of profiles, which has a rule of its own. */
function endsAtList(sequence: Sequence): boolean {
  const reached = reachedStates(sequence, 'steps-only');
  return statesWithoutStep(sequence).some(({ id, shows }) => shows === 'profile-list' && reached.has(id));
}

/** Units with codes and no way to read them; none is told of while a sequence could not be read. */
function unitsWithoutSequence(base: Base, readerFindings: readonly Finding[]): Finding[] {
  if (readerFindings.some(({ place }) => place.file.startsWith('sequences/'))) return [];
  return [...base.families.values()]
    .filter(({ id }) => base.profilesOfFamily.has(id) && !base.sequencesOfFamily.has(id))
    .map((family) => ({
      rule: 'no-way-to-code',
      severity: 'error',
      place: family.place(['name']),
      message: `No sequence leads to the code of a “${family.data.name}”.`,
      help: 'Add a file to sequences/ that says how a rider comes to the active code on this unit.',
      related: [],
    }));
}
