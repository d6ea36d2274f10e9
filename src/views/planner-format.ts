/** The planner’s data as they are sent to the page, and what the page makes of them. */

import type { Advice } from '../decide/plan/advice.ts';
import type { PlanPolicy } from '../decide/plan/policy.ts';
import type { Catalogue } from '../decide/plan/read-query.ts';
import type { SectionId } from '../decide/plan/workings.ts';
import type { JudgedProfile } from '../decide/table-given.ts';
import type { Reason } from '../decide/verdict.ts';
import type { BoostBehaviour, Characteristic, Quantity, ResponseAtStep } from '../measure/quantity.ts';
import { fromPortable, type PortableTable } from '../tables/portable.ts';
import type { LineTexts } from './line-texts.ts';

/** Changes with the shape of these files, so that a kept file of an older site is not misread. */
export const plannerFormat = 4;

/** `planner.json`: what every plan needs. */
export interface PlannerData {
  readonly format: typeof plannerFormat;
  readonly policy: Pick<PlanPolicy, 'inputs' | 'rules'> & { readonly cut: PortableTable };
  readonly catalogue: Catalogue;
  readonly units: readonly PlannerUnit[];
  /** Titles of sources, by id. */
  readonly sources: Readonly<Record<string, string>>;
  readonly lines: LineTexts;
  readonly advice: Advice;
  readonly labels: PlannerLabels;
}

/** What parts of an answer are called. */
export interface PlannerLabels {
  readonly sections: Readonly<Record<SectionId, string>>;
  readonly topics: Readonly<Record<Reason['topic'], string>>;
  readonly outcomes: Readonly<Record<Reason['outcome'], string>>;
  readonly captions: Readonly<Record<Caption, string>>;
}

/** What stands by a figure or a list, the same for every plan: sent as data, so that it is no part of the scripts. */
export type Caption =
  | 'level'
  | 'levelShaded'
  | 'response'
  | 'responseCorrected'
  | 'responseClean'
  | 'sources'
  | 'practice'
  | 'staysThroughout'
  | 'staysUnsure'
  | 'lost'
  | 'unitLost'
  | 'sayUnit'
  | 'putRight'
  | 'compareCode';

export interface PlannerUnit {
  readonly id: string;
  readonly name: string;
  readonly fitment: readonly { readonly model: string; readonly fromYear: number; readonly toYear: number }[];
  /** Its outputs: FL, FR, RL, RR. */
  readonly channels: readonly string[];
  readonly volume: { readonly lowestStep: number; readonly highestStep: number };
}

/** A value and what its uncertainty is made of. */
export interface SentQuantity {
  readonly v: number;
  readonly unit: Quantity['unit'];
  /** Standard uncertainty and coverage factor; left out where there is none. */
  readonly u?: number;
  readonly k?: number;
  readonly bound?: Quantity['bound'];
  /** Influences and what each contributes, in turn: place in the list of influences, standard uncertainty. */
  readonly parts?: readonly number[];
}

export interface SentCharacteristic extends SentQuantity {
  readonly name: Characteristic['name'];
  readonly at: Characteristic['conditions'];
  readonly sources?: readonly string[];
}

/** What acts on values: its name, degrees of freedom (null: known from limits), 1 where all within them is alike. */
export type SentInfluence = readonly [
  name: string,
  degreesOfFreedom: number | null,
  isRectangular: 0 | 1,
  isShared: 0 | 1,
];

/** What a verdict needs of a profile. */
export interface SentVerdictProfile {
  readonly system: JudgedProfile['data']['system'];
  readonly origin: JudgedProfile['data']['origin'];
  readonly boostBehaviour: BoostBehaviour;
  readonly conditions: Characteristic['conditions'] | null;
  readonly values: readonly SentCharacteristic[];
  /** Values at other steps. */
  readonly others: readonly SentCharacteristic[];
  readonly missing: JudgedProfile['output']['missing'];
}

/** `units/<family>/planner.json`: its profiles by id. */
export interface PlannerUnitData {
  readonly format: typeof plannerFormat;
  readonly profiles: Readonly<Record<string, SentVerdictProfile & { readonly code: string }>>;
}

/** The profiles of a unit by id and code, in the order of their files. */
export function codesOf({ profiles }: PlannerUnitData): PlannerCode[] {
  return Object.entries(profiles).map(([id, { code }]) => ({ id, code }));
}

export interface PlannerCode {
  readonly id: string;
  readonly code: string;
}

/** `profiles/<id>/planner.json`: what the arithmetic needs on top. */
export interface PlannerProfileData extends SentVerdictProfile {
  readonly format: typeof plannerFormat;
  readonly influences: readonly SentInfluence[];
  readonly levels: readonly {
    readonly step: number;
    readonly volts: SentQuantity;
    readonly clean: boolean;
  }[];
  readonly stepLaw: readonly {
    readonly fromStep: number;
    readonly toStep: number;
    readonly stepSize: SentQuantity;
  }[];
  readonly responses: readonly {
    readonly step: number;
    readonly points: readonly (readonly [hz: number, level: SentQuantity])[];
  }[];
  readonly mutedChannels: readonly string[];
}

/** The policy that decides on the page. */
export function policyFrom({ policy }: PlannerData): PlanPolicy {
  return { ...policy, cut: fromPortable(policy.cut) };
}

/** A profile as far as verdicts go. */
export function verdictProfile(
  sent: SentVerdictProfile,
  channels: readonly string[],
  id: string,
): JudgedProfile {
  return profileOf(sent, channels, id, []);
}

/** A profile with all its arithmetic needs. */
export function arithmeticProfile(
  sent: PlannerProfileData,
  channels: readonly string[],
  id: string,
): JudgedProfile {
  const { influences } = sent;
  const some = profileOf(sent, channels, id, influences);
  const output = {
    ...some.output,
    levelByStep: sent.levels.map(({ step, volts, clean }) => ({
      step,
      volts: quantityFrom(volts, influences),
      thdPercent: null,
      clean,
      readings: [],
    })),
    stepLaw: sent.stepLaw.map((part) => ({ ...part, stepSize: quantityFrom(part.stepSize, influences) })),
    responses: sent.responses.map(
      ({ step, points }): ResponseAtStep => ({
        step,
        points: points.map(([hz, level]) => ({ hz, level: quantityFrom(level, influences), readings: [] })),
      }),
    ),
    mutedChannels: sent.mutedChannels,
  };
  return { ...some, output };
}

function profileOf(
  { system, origin, boostBehaviour, conditions, values, others, missing }: SentVerdictProfile,
  channels: readonly string[],
  id: string,
  influences: readonly SentInfluence[],
): JudgedProfile {
  const characteristic = (one: SentCharacteristic): Characteristic => ({
    ...quantityFrom(one, influences),
    name: one.name,
    conditions: one.at,
    readings: [],
    sources: one.sources ?? [],
  });
  const output: JudgedProfile['output'] = {
    profile: id,
    characteristics: values.map(characteristic),
    others: others.map(characteristic),
    levelByStep: [],
    stepLaw: [],
    responses: [],
    boostBehaviour,
    mutedChannels: [],
    conditions: conditions ?? undefined,
    sessions: [],
    normalised: [],
    agreement: undefined,
    missing,
  };
  return { data: { system, origin }, channels, output };
}

function quantityFrom(sent: SentQuantity, influences: readonly SentInfluence[]): Quantity {
  const { v: value, unit, u = 0, k = 0, bound = 'exact', parts = [] } = sent;
  const budget: Quantity['budget'][number][] = [];
  for (let at = 0; at + 1 < parts.length; at += 2) {
    const place = parts[at] ?? 0;
    const influence = influences[place];
    if (!influence) throw new Error(`there is no influence ${place}`);
    const [name, degreesOfFreedom, isRectangular, isShared] = influence;
    budget.push({
      name,
      standardUncertainty: parts[at + 1] ?? 0,
      degreesOfFreedom: degreesOfFreedom ?? Number.POSITIVE_INFINITY,
      shape: isRectangular ? 'rectangular' : undefined,
      id: isShared ? `${place}` : undefined,
    });
  }
  return {
    value,
    unit,
    standardUncertainty: u,
    coverageFactor: k,
    expandedUncertainty: k * u,
    bound,
    budget,
  };
}
