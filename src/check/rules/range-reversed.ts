import type { Base, DataPath, Entry, Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';

export const rangeReversed: Rule = {
  id: 'range-reversed',
  title: 'Every range goes from its lower to its upper end.',
  explanation:
    'A range whose ends are exchanged holds nothing: no amplifier input, no load, no volume step, no frequency lies in it, and everything judged by it comes out wrong. Equal ends are allowed.',
  severity: 'error',
  examples: [
    {
      title: 'the two ends of an input range exchanged',
      file: 'plans/two-channel.yaml',
      good: 'leastVolts: 1, mostVolts: 8',
      bad: 'leastVolts: 8, mostVolts: 1',
      foundAt: '8,',
    },
    {
      title: 'an amplifier rated into a load it may not drive',
      file: 'equipment/four-channels.yaml',
      good: 'ratedOhms: 4\nleastOhms: 2',
      bad: 'ratedOhms: 2\nleastOhms: 4',
      foundAt: '4',
    },
  ],
  check: ({ answers: { base } }) =>
    [...ranges(base)].flatMap(({ entry, path, from, to, ends, what }) =>
      from <= to
        ? []
        : [
            {
              rule: 'range-reversed',
              severity: 'error',
              place: entry.place([...path, ends[0]]),
              message: `${what} goes from ${from} to ${to}: its ends are exchanged, or one of them is wrong.`,
              help: `Write the lower one as ${ends[0]} and the upper one as ${ends[1]}.`,
              related: [{ place: entry.place([...path, ends[1]]), message: 'The other end.' }],
            } satisfies Finding,
          ],
    ),
};

interface Range {
  readonly entry: Pick<Entry, 'place'>;
  readonly path: DataPath;
  readonly from: number;
  readonly to: number;
  readonly ends: readonly [lower: string, upper: string];
  readonly what: string;
}

function* ranges(base: Base): Generator<Range> {
  for (const entry of base.plans.values()) {
    const { input } = entry.data;
    if (!input) continue;
    const ends = ['leastVolts', 'mostVolts'] as const;
    yield {
      entry,
      path: ['input'],
      from: input.leastVolts,
      to: input.mostVolts,
      ends,
      what: 'The input range',
    };
  }
  for (const entry of base.equipment.values()) {
    const { data } = entry;
    if (data.is !== 'amplifier') continue;
    const { leastVolts, mostVolts, leastOhms, ratedOhms } = data;
    yield {
      entry,
      path: [],
      from: leastVolts,
      to: mostVolts,
      ends: ['leastVolts', 'mostVolts'],
      what: 'The input range',
    };
    const ends = ['leastOhms', 'ratedOhms'] as const;
    yield { entry, path: [], from: leastOhms, to: ratedOhms, ends, what: 'The load' };
  }
  for (const entry of base.families.values()) {
    const { lowestStep, highestStep } = entry.data.volume;
    const ends = ['lowestStep', 'highestStep'] as const;
    yield { entry, path: ['volume'], from: lowestStep, to: highestStep, ends, what: 'The volume' };
  }
  for (const entry of base.outputs.values()) {
    for (const [index, { fromHz, toHz }] of entry.data.instrument.accuracy.entries()) {
      const ends = ['fromHz', 'toHz'] as const;
      const path = ['instrument', 'accuracy', index];
      yield { entry, path, from: fromHz, to: toHz, ends, what: 'The voltmeter’s specification' };
    }
  }
}
