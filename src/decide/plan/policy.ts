/** The table a plan’s verdict comes from: the shop’s own, or the one below. */
import type { TableEntry } from '../../../schemas/index.ts';
import type { CutTable } from '../../tables/grid/grid.ts';
import type { Table } from '../../tables/table.ts';
import { phrase } from '../../words/index.ts';

/** A table that decides plans, with its entry’s columns. */
export interface PlanPolicy {
  readonly inputs: TableEntry['inputs'];
  readonly rules: readonly { readonly id: string; readonly say?: string | undefined }[];
  readonly cut: CutTable;
}

/** A policy as it was read, its tests with it. */
export interface ReadPolicy extends PlanPolicy {
  readonly table: Table;
}

/**
 * What decides where the shop has no table of its own: common practice, no source. A rear feed up to 12 dB below the
 * front is within what an amplifier’s gain makes up; one within 3 dB needs nothing.
 */
export function usualPolicy(): TableEntry {
  return {
    name: 'Keep, correct, reflash or replace',
    question: 'Do I need to change this profile for my plan?',
    about: 'What the planner decides by.',
    order: 0,
    hit: 'first',
    decides: 'plan',
    inputs: [
      reckoned('feeds', phrase('The unit drives')),
      { id: 'system', label: phrase('Meant for'), holds: 'trait', trait: 'system', mayBeMissing: false },
      reckoned('level-short', phrase('Level short by')),
      reckoned('low-end-short', phrase('Bass ends too early by')),
      reckoned('boost-over', phrase('Boost over by')),
      {
        id: 'boost-goes',
        label: phrase('Boost with volume'),
        holds: 'trait',
        trait: 'boost-behaviour',
        mayBeMissing: false,
      },
      reckoned('can-correct', phrase('Equaliser')),
      reckoned('rear-wanted', phrase('Rear wanted')),
      {
        id: 'rear',
        label: phrase('Rear outputs'),
        holds: 'trait',
        trait: 'rear-outputs',
        mayBeMissing: false,
      },
      reckoned('rear-below-front', phrase('Rear below front by')),
      reckoned('level-over', phrase('Level over by')),
    ],
    outputs: [
      {
        id: 'verdict',
        label: 'Verdict',
        holds: 'choice',
        values: ['reflash', 'keep-and-correct', 'keep'],
      },
    ],
    rules: [
      rule('not-for-the-factory-amplifier', 'reflash', { feeds: 'factory-amplifier', system: 'unamplified' }),
      rule('not-for-speakers', 'reflash', { feeds: 'speakers', system: 'amplified' }),
      rule('too-quiet', 'reflash', { 'level-short': '> 0' }),
      rule('bass-ends-early', 'reflash', { 'low-end-short': '> 0' }),
      rule(
        'boost-moves',
        'reflash',
        { 'boost-over': '> 0', 'boost-goes': 'fading, switched, changing' },
        phrase('No equaliser setting takes out a boost that changes.'),
      ),
      rule(
        'boost-stays',
        'reflash',
        { 'boost-over': '> 0', 'can-correct': 'no' },
        phrase('The plan has no equaliser to take it out.'),
      ),
      rule('rear-missing', 'reflash', {
        'rear-wanted': 'yes',
        rear: 'silent, none',
        feeds: 'not(aftermarket-amplifier)',
      }),
      rule('rear-weak', 'reflash', {
        'rear-wanted': 'yes',
        rear: 'playing',
        'rear-below-front': '> 3',
        feeds: 'not(aftermarket-amplifier)',
      }),
      rule('rear-too-weak', 'reflash', { 'rear-wanted': 'yes', rear: 'playing', 'rear-below-front': '> 12' }),
      rule(
        'boost-out',
        'keep-and-correct',
        { 'boost-over': '> 0' },
        phrase('It stays the same with the volume, so the amplifier’s equaliser can take it out.'),
      ),
      rule(
        'too-loud',
        'keep-and-correct',
        { 'level-over': '> 0' },
        phrase('Attenuate the feed or stop at a lower step.'),
      ),
      rule(
        'rear-from-front',
        'keep-and-correct',
        { 'rear-wanted': 'yes', rear: 'silent, none' },
        phrase('Feed the amplifier’s rear inputs from the front outputs.'),
      ),
      rule(
        'rear-gain',
        'keep-and-correct',
        { 'rear-wanted': 'yes', rear: 'playing', 'rear-below-front': '> 3' },
        phrase('Make up for it with the rear gain of the amplifier.'),
      ),
      rule('as-it-is', 'keep', {}),
    ],
    sources: [],
  };
}

function reckoned(
  name: Extract<TableEntry['inputs'][number], { holds: 'reckoned' }>['reckoned'],
  label: string,
): TableEntry['inputs'][number] {
  return { id: name, label, holds: 'reckoned', reckoned: name };
}

function rule(
  id: string,
  verdict: string,
  when: TableEntry['rules'][number]['when'],
  say?: string,
): TableEntry['rules'][number] {
  return { id, when, give: { verdict }, say, guides: [], profiles: [], sources: [] };
}
