/** The planner’s data, made from the answers: one file for all, one for each unit, one for each profile. */
import type { Answers } from '../answers.ts';
import { catalogueOf, judgedProfile } from '../answers.ts';
import { adviceTexts } from '../decide/plan/advice.ts';
import { sectionIds } from '../decide/plan/workings.ts';
import { type JudgedProfile, numberBehind } from '../decide/table-given.ts';
import type { Characteristic, CharacteristicName, ProfileOutput, Quantity } from '../measure/quantity.ts';
import { toPortable } from '../tables/portable.ts';
import { phrase } from '../words/index.ts';
import { lineTexts } from './line-texts.ts';
import { sectionTitle } from './plan-words.ts';
import {
  type PlannerData,
  type PlannerProfileData,
  type PlannerUnitData,
  plannerFormat,
  type SentCharacteristic,
  type SentInfluence,
  type SentQuantity,
  type SentVerdictProfile,
} from './planner-format.ts';
import { outcomeLabel, topicLabel } from './wording.ts';

function labelled<Id extends string>(ids: readonly Id[], label: (id: Id) => string): Record<Id, string> {
  return Object.fromEntries(ids.map((id) => [id, label(id)])) as Record<Id, string>;
}

/** What every plan needs. */
export function plannerData(answers: Answers): PlannerData {
  const { base, policy } = answers;
  return {
    format: plannerFormat,
    policy: {
      inputs: policy.inputs,
      rules: policy.rules.map(({ id, say }) => ({ id, say })),
      cut: toPortable(policy.cut),
    },
    catalogue: catalogueOf(answers),
    units: [...base.families.values()].map(({ id, data }) => ({
      id,
      name: data.name,
      fitment: data.fitment.map(({ model, fromYear, toYear }) => ({ model, fromYear, toYear })),
      channels: data.output.channels,
      volume: { lowestStep: data.volume.lowestStep, highestStep: data.volume.highestStep },
    })),
    sources: Object.fromEntries([...base.sources.values()].map(({ id, data }) => [id, data.title])),
    lines: lineTexts(),
    advice: adviceTexts(),
    labels: {
      sections: labelled(sectionIds, sectionTitle),
      topics: labelled(['level', 'bass', 'low-end', 'rear', 'system'], topicLabel),
      captions: {
        level: phrase('Level by volume step'),
        levelShaded: phrase('Level by volume step. Shaded: clean.'),
        response: phrase('Frequency response'),
        responseCorrected: phrase('Response as it is and with the equaliser settings below.'),
        responseClean: phrase('Response at the clean steps. A band about a curve is its uncertainty (95 %).'),
        sources: phrase('Where these values come from'),
        practice: phrase('common practice, no source'),
        staysThroughout: phrase(
          'In this order the profile can stay through every stage, and nothing is bought twice.',
        ),
        staysUnsure: phrase(
          'No order is sure to keep this profile through every stage; in this one it is in question least often.',
        ),
        sayUnit: phrase('Say which unit you have: by model line and year, or straight away.'),
        compareCode: phrase(
          'Compare it with your screen, character by character, and choose it from the list.',
        ),
        putRight: phrase('Not worked out: put right what is marked in the form.'),
        unitLost: phrase(
          'The data of this unit did not come through. Check the signal, then change any field to try again.',
        ),
        lost: phrase('Its data did not come through. Check the signal and choose it again.'),
      },
      outcomes: labelled(['fits', 'correct', 'fails', 'borderline', 'unknown'], outcomeLabel),
    },
  };
}

/** What verdicts go by, of every profile of a unit. */
export function plannerUnit(answers: Answers, family: string): PlannerUnitData {
  const profiles = (answers.base.profilesOfFamily.get(family) ?? []).flatMap(({ id, data: { code } }) => {
    const judged = judgedProfile(answers, id);
    return judged ? [[id, { code, ...verdictPart(answers, judged, decisiveOnly) }] as const] : [];
  });
  return { format: plannerFormat, profiles: Object.fromEntries(profiles) };
}

/** What the arithmetic of a profile goes by; undefined where there is no such profile. */
export function plannerProfile(answers: Answers, id: string): PlannerProfileData | undefined {
  const judged = judgedProfile(answers, id);
  return judged && profileData(answers, judged);
}

function profileData(answers: Answers, judged: JudgedProfile): PlannerProfileData {
  const { output } = judged;
  const book = new InfluenceBook();
  const clean = valueNamed(output, 'highest-clean-step');
  const steps = [clean, valueNamed(output, 'boosted-clean-step')];
  const part = verdictPart(answers, judged, { keep: () => true, sent: (one) => book.withParts(one) });
  return {
    format: plannerFormat,
    ...part,
    levels: output.levelByStep.map(({ step, volts, clean: isClean }) => ({
      step,
      volts: steps.includes(step) ? book.withParts(volts) : plain(volts),
      clean: isClean,
    })),
    stepLaw: output.stepLaw.map(({ fromStep, toStep, stepSize }) => ({
      fromStep,
      toStep,
      stepSize: book.withParts(stepSize),
    })),
    responses: output.responses.map(({ step, points }) => ({
      step,
      // Nothing is worked out from a response past the clean steps: it is only drawn.
      points: points.map(
        ({ hz, level }) => [hz, step <= (clean ?? step) ? book.withParts(level) : plain(level)] as const,
      ),
    })),
    mutedChannels: output.mutedChannels,
    influences: book.influences,
  };
}

/** Which values go along, and as what. */
interface Selection {
  readonly keep: (name: CharacteristicName) => boolean;
  readonly sent: (value: Quantity) => SentQuantity;
}

const judgedBy: readonly CharacteristicName[] = [
  'clean-volts',
  'bass-boost',
  'lower-corner',
  'rear-to-front',
];
const decisiveOnly: Selection = { keep: (name) => judgedBy.includes(name), sent: plain };

function verdictPart(
  { policy }: Answers,
  { data, output }: JudgedProfile,
  { keep, sent }: Selection,
): SentVerdictProfile {
  const ofPolicy = new Set(policy.inputs.flatMap((input) => numberBehind(input, output) ?? []));
  const characteristic = (one: Characteristic): SentCharacteristic => ({
    ...sent(one),
    name: one.name,
    at: one.conditions,
    ...(sent === plain ? {} : { sources: one.sources }),
  });
  return {
    system: data.system,
    origin: data.origin,
    boostBehaviour: output.boostBehaviour,
    conditions: output.conditions ?? null,
    values: output.characteristics.filter((one) => keep(one.name) || ofPolicy.has(one)).map(characteristic),
    // Of values at other steps a plan asks for the greatest boost alone.
    others: output.others.filter(({ name }) => name === 'bass-boost').map(characteristic),
    missing: output.missing.filter(({ name }) => keep(name)),
  };
}

function valueNamed(output: ProfileOutput, name: CharacteristicName): number | undefined {
  return output.characteristics.find((one) => one.name === name)?.value;
}

function plain({ value, unit, standardUncertainty, coverageFactor, bound }: Quantity): SentQuantity {
  return {
    v: value,
    unit,
    ...(standardUncertainty === 0 ? {} : { u: standardUncertainty, k: coverageFactor }),
    ...(bound === 'exact' ? {} : { bound }),
  };
}

/** The influences of one profile’s values, each once: what several values share has one place. */
class InfluenceBook {
  readonly influences: SentInfluence[] = [];
  /** By the id of what several values share, which says all of it; else by all that is said. */
  readonly #placesById = new Map<string, number>();
  readonly #places = new Map<string, number>();

  withParts(value: Quantity): SentQuantity {
    const parts: number[] = [];
    // Seven digits: a millionth of an uncertainty that is itself known to two digits.
    for (const part of value.budget) parts.push(this.#place(part), toSeven(part.standardUncertainty));
    return { ...plain(value), ...(parts.length === 0 ? {} : { parts }) };
  }

  #place({ name, id, degreesOfFreedom, shape }: Quantity['budget'][number]): number {
    const places = id === undefined ? this.#places : this.#placesById;
    const key = id ?? `${name}|${degreesOfFreedom}|${shape}`;
    const known = places.get(key);
    if (known !== undefined) return known;
    const dof = Number.isFinite(degreesOfFreedom) ? toSeven(degreesOfFreedom) : null;
    places.set(key, this.influences.length);
    this.influences.push([name, dof, shape === 'rectangular' ? 1 : 0, id === undefined ? 0 : 1]);
    return this.influences.length - 1;
  }
}

function toSeven(value: number): number {
  return Number(value.toPrecision(7));
}
