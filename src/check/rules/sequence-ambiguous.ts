import type { SequenceAction } from '../../../schemas/index.ts';
import type { Entry, Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';

export const sequenceAmbiguous: Rule = {
  id: 'sequence-ambiguous',
  title: 'In every state, each action leads one way.',
  explanation:
    'Two steps from one state must be told apart by what the rider does. They are not where both are the same key pressed as often, the same knob turned as far, the ignition turned to the same place, or a wait beside another wait. Two holds of the same controls are told apart by the moment they begin or end, or by times that do not overlap. If the unit goes one way or the other by itself, write one step to what is seen mostly and a recovery for the other.',
  severity: 'error',
  examples: [
    {
      title: 'one key that leads two ways',
      file: 'sequences/moorlight-menu.yaml',
      good: '    say: Press BACK once.\n',
      bad: '    say: Press BACK once.\n  - { from: list, to: dark, action: { kind: press, control: back }, say: Press BACK. }\n',
      foundAt: '{ kind: press, control: back }, say',
    },
  ],
  check: ({ answers: { base } }) => [...base.sequences.values()].flatMap(ambiguities),
};

function ambiguities(sequence: Entry<'sequences'>): Finding[] {
  const steps = sequence.data.transitions;
  return steps.flatMap((step, index) => {
    const before = steps.findIndex(
      (other, at) => at < index && other.from === step.from && areAlike(other.action, step.action),
    );
    const other = steps[before];
    if (!other) return [];
    return [
      {
        rule: 'sequence-ambiguous',
        severity: 'error',
        place: sequence.place(['transitions', index, 'action']),
        message:
          other.to === step.to
            ? `This step from “${step.from}” to “${step.to}” stands here twice.`
            : `A rider cannot tell two steps from “${step.from}” apart: this ${nouns[step.action.kind]} leads to “${step.to}”, another like it to “${other.to}”.`,
        help:
          other.to === step.to
            ? 'Keep one of the two.'
            : 'Correct one of them; if the unit decides by itself, make the rarer way a recovery.',
        related: [{ place: sequence.place(['transitions', before, 'action']), message: 'The other step.' }],
      },
    ];
  });
}

const nouns: Readonly<Record<SequenceAction['kind'], string>> = {
  ignition: 'turn of the ignition',
  wait: 'wait',
  press: 'press',
  tap: 'tap',
  hold: 'hold',
  turn: 'turn',
};

/** Whether two actions are one and the same in the eyes of a rider. */
function areAlike(a: SequenceAction, b: SequenceAction): boolean {
  if (a.kind === 'ignition' && b.kind === 'ignition') return a.position === b.position;
  if (a.kind === 'wait' && b.kind === 'wait') return true;
  if ((a.kind === 'press' || a.kind === 'tap') && (b.kind === 'press' || b.kind === 'tap')) {
    return a.control === b.control && a.times === b.times;
  }
  if (a.kind === 'turn' && b.kind === 'turn') {
    return a.control === b.control && a.direction === b.direction && a.clicks === b.clicks;
  }
  if (a.kind === 'hold' && b.kind === 'hold') {
    const held = new Set(a.controls);
    return (
      new Set(b.controls).size === held.size &&
      b.controls.every((control) => held.has(control)) &&
      mayCoincide(a.begin, b.begin) &&
      mayCoincide(a.end, b.end) &&
      a.leastSeconds <= b.mostSeconds &&
      b.leastSeconds <= a.mostSeconds
    );
  }
  return false;
}

function mayCoincide(a: string, b: string): boolean {
  return a === b || a === 'any-time' || b === 'any-time';
}
