import { describe, expect, test } from 'vitest';
import type { Claim } from '../../schemas/index.ts';
import type { Answers } from '../../src/answers.ts';
import type { ProfileOutput } from '../../src/measure/index.ts';
import { statementViews } from '../../src/views/statement-comparison.ts';
import { characteristic, demoAnswers, output } from './sample.ts';

/** Answers that hold one statement with one claim, and one output. */
function answersWith(claim: Claim, given: ProfileOutput): Answers {
  const statement = { id: 's', data: { source: 'src', quote: 'q', claims: [claim] } };
  const base = {
    statementsOfProfile: new Map([[given.profile, [statement]]]),
    sources: new Map([['src', { data: { title: 'A bulletin' } }]]),
    readings: new Map([['2026-03-quay', { readingsOf: () => [{ channel: 'RL' }] }]]),
  };
  return { base, outputs: new Map([[given.profile, given]]), planAnswers: new Map() } as unknown as Answers;
}
const compare = (claim: Claim, given: ProfileOutput) =>
  statementViews(answersWith(claim, given), given.profile)[0]?.claims[0];

const profile = 'family/code';
const volts = (valueVolts: number, toleranceVolts?: number): Claim => ({
  profile,
  trait: 'clean-volts',
  valueVolts,
  ...(toleranceVolts === undefined ? {} : { toleranceVolts }),
});

// E_n = (x − X)/√(U_x² + U_X²), agreement where |E_n| ≤ 1: ISO 13528, 9.7.
describe('a stated value', () => {
  const measured = output([characteristic('clean-volts', 3.62, 0.05)]);

  test('agrees where it lies within both uncertainties together', () => {
    expect(compare(volts(3.7, 0.1), measured)).toMatchObject({
      comparison: 'agrees',
      stated: '3.7\u00a0V ±\u00a00.1\u00a0V',
    });
    // √(0.05² + 0.1²) = 0.1118: 3.7318 is the last that agrees.
    expect(compare(volts(3.731, 0.1), measured)?.comparison).toBe('agrees');
    expect(compare(volts(3.733, 0.1), measured)?.comparison).toBe('differs');
  });

  test('without a tolerance is meant as rounded', () => {
    // 4 stands for 3.5 to 4.5; 4.0 cannot be told from 4 in YAML, and 3.9 stands for 3.85 to 3.95.
    expect(compare(volts(4), measured)?.comparison).toBe('agrees');
    expect(compare(volts(3.9), measured)?.comparison).toBe('differs');
  });

  test('against a bound agrees on its side', () => {
    const low = output([characteristic('lower-corner', 20, 0, { bound: 'at-most' })]);
    const hz = (valueHz: number): Claim => ({ profile, trait: 'lower-corner', valueHz });
    expect(compare(hz(15), low)?.comparison).toBe('agrees');
    expect(compare(hz(40), low)?.comparison).toBe('differs');
  });

  test('that fits another step says which', () => {
    const fading = output([characteristic('bass-boost', 0, 0.05, { at: { step: 24 } })], {
      others: [characteristic('bass-boost', 8.7, 0.2, { at: { step: 12, channel: 'FL' } })],
    });
    const view = compare({ profile, trait: 'bass-boost', valueDb: 9, toleranceDb: 0.5 }, fading);
    expect(view?.comparison).toBe('agrees');
    expect(view?.measuredAt).toContain('front left, step 12');
  });

  test('of something not measured is not judged', () => {
    expect(compare(volts(4), output([]))).toMatchObject({ comparison: 'not-measured', measured: undefined });
  });
});

describe('a claim that an output is silent', () => {
  const silent = (channel: 'RL' | 'FR', value: boolean): Claim => ({
    profile,
    trait: 'muted',
    channel,
    value,
  });
  const muted = output([], { mutedChannels: ['RL'] });

  test('is held against what was found', () => {
    expect(compare(silent('RL', true), muted)).toMatchObject({ comparison: 'agrees', measured: 'silent' });
    expect(compare(silent('RL', true), output([]))).toMatchObject({
      comparison: 'differs',
      measured: 'plays',
    });
  });

  test('of an output nobody read is not judged', () => {
    expect(compare(silent('FR', true), muted)?.comparison).toBe('not-measured');
  });
});

describe('a claim that nobody measured', () => {
  const bulletin = 'bulletin';
  const statement = (source: string, claim: Claim) => ({
    id: source,
    data: { source, quote: 'q', claims: [claim] },
  });
  /** Whether each of some statements about an unmeasured profile is marked as resting on one source. */
  function marks(
    statements: readonly ReturnType<typeof statement>[],
    restsOn: Readonly<Record<string, readonly string[]>> = {},
    given: ProfileOutput = output([]),
  ): (boolean | undefined)[] {
    const ids = new Set([bulletin, ...statements.map((one) => one.data.source), ...Object.keys(restsOn)]);
    const sources = [...ids].map((id) => [id, { data: { title: id, restsOn: restsOn[id] } }] as const);
    const base = {
      statementsOfProfile: new Map([[profile, statements]]),
      sources: new Map(sources),
      readings: new Map(),
    };
    const answers = { base, outputs: new Map([[profile, given]]) } as unknown as Answers;
    return statementViews(answers, profile).map((view) => view.claims[0]?.oneSourceOnly);
  }

  test('is marked where one source makes it', () => {
    expect(marks([statement(bulletin, volts(4, 0.1))])).toEqual([true]);
    const silent: Claim = { profile, trait: 'muted', channel: 'RL', value: true };
    expect(marks([statement(bulletin, silent)])).toEqual([true]);
  });

  test('is not where a second source says the same, within both tolerances together', () => {
    expect(marks([statement(bulletin, volts(4, 0.1)), statement('letter', volts(4.1, 0.1))])).toEqual([
      false,
      false,
    ]);
    expect(marks([statement(bulletin, volts(4, 0.1)), statement('letter', volts(4.2, 0.1))])).toEqual([
      true,
      true,
    ]);
  });

  test('stays marked where the second source was taken from the first, or both from a third', () => {
    const two = [statement(bulletin, volts(4)), statement('letter', volts(4))];
    expect(marks(two, { letter: [bulletin] })).toEqual([true, true]);
    expect(marks(two, { letter: ['sheet'], bulletin: ['sheet'] })).toEqual([true, true]);
    expect(marks(two, { letter: ['one'], bulletin: ['another'] })).toEqual([false, false]);
  });

  test('is not marked once it is measured, even where the readings say otherwise', () => {
    const measured = output([characteristic('clean-volts', 3.62, 0.05)]);
    expect(marks([statement(bulletin, volts(4, 0.1))], {}, measured)).toEqual([false]);
  });

  test('none of the demo’s claims rests on one source: all are measured', async () => {
    const answers = await demoAnswers();
    const views = [...answers.base.profiles.keys()].flatMap((id) => statementViews(answers, id));
    const claims = views.flatMap((view) => view.claims);
    expect(claims.length).toBeGreaterThan(20);
    expect(claims.filter((claim) => claim.oneSourceOnly || claim.comparison === 'not-measured')).toEqual([]);
  });
});
