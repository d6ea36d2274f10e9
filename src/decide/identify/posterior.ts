/**
 * How probable each group of profiles is, given readings.
 *
 * The tone's level is unknown: a phone at full volume is not full scale. All readings share that offset, so
 * it is a nuisance parameter, normal about 0 with a standard deviation of some decibels, and is integrated
 * out in closed form (hypothesis.ts). Whatever moves all readings alike, the meter's own gain error too, is
 * thereby cheap, and the differences between readings decide.
 */
import { ratioDb } from '../../measure/index.ts';
import { plausibleVolts } from './constants.ts';
import { type Observed, observe } from './gaussian.ts';
import { type Expected, type Hypothesis, jointOf } from './hypothesis.ts';
import type { IdentifyModel } from './model.ts';
import type { LevelReading } from './reading.ts';

/** A hypothesis after the readings. */
export interface Judged<H extends Hypothesis = Hypothesis> {
  readonly hypothesis: H;
  readonly probability: number;
  /** The readings it says something about. */
  readonly expected: readonly Expected[];
  readonly observed: Observed;
}

export interface Posterior {
  /** In the order of the model's groups. */
  readonly groups: readonly Judged<IdentifyModel['groups'][number]>[];
  readonly strangers: readonly Judged[];
  /** That it is none of the groups; with them it makes one. */
  readonly noneOfThese: number;
}

/** Density of a level nothing is known of, per dB: log-uniform over the plausible volts. */
const plausibleDensity = 1 / ratioDb(plausibleVolts[1] / plausibleVolts[0]);

/** Bayes' rule over the groups of a model and none of them. */
export function posteriorOf(model: IdentifyModel, readings: readonly LevelReading[]): Posterior {
  const groups = model.groups.map((one) => weigh(one, readings));
  const strangers = model.strangers.map((one) => weigh(one, readings));
  const most = Math.max(...[...groups, ...strangers].map((one) => one.logWeight));
  const total = [...groups, ...strangers].reduce((sum, one) => sum + Math.exp(one.logWeight - most), 0);
  const judged = <H extends Hypothesis>({ logWeight, ...rest }: Weighed<H>): Judged<H> => ({
    ...rest,
    probability: Math.exp(logWeight - most) / total,
  });
  const none = strangers.map(judged);
  return {
    groups: groups.map(judged),
    strangers: none,
    noneOfThese: none.reduce((sum, one) => sum + one.probability, 0),
  };
}

interface Weighed<H extends Hypothesis> extends Omit<Judged<H>, 'probability'> {
  /** Natural logarithm of prior times likelihood. */
  readonly logWeight: number;
}

/** Readings a hypothesis says nothing about may show any plausible volts. */
function weigh<H extends Hypothesis>(hypothesis: H, readings: readonly LevelReading[]): Weighed<H> {
  const expected = readings.flatMap((reading) => {
    const prediction = hypothesis.predict(reading);
    return prediction ? [{ ...reading, prediction }] : [];
  });
  const observed = observe(
    jointOf(hypothesis, expected),
    expected.map((one) => one.levelDbv),
  );
  const unsaid = (readings.length - expected.length) * Math.log(plausibleDensity);
  return {
    hypothesis,
    expected,
    observed,
    logWeight: Math.log(hypothesis.prior) + observed.logDensity + unsaid,
  };
}
