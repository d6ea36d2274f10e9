/** Outputs made by hand for the tests of the views, and the answers of the demo content. */
import { fileURLToPath } from 'node:url';
import { type Answers, readAnswers } from '../../src/answers.ts';
import type {
  Bound,
  Characteristic,
  CharacteristicName,
  Conditions,
  ProfileOutput,
  Unit,
} from '../../src/measure/index.ts';
import { type PageViews, pageViews, type ViewOf } from '../../src/views/page-views.ts';

export const mainConditions: Conditions = { loadOhms: 4, supplyVolts: 14.4, signalDbfs: 0 };

const units: Readonly<Record<CharacteristicName, Unit>> = {
  'clean-volts': 'V',
  'highest-clean-step': 'step',
  'bass-boost': 'dB',
  'bass-boost-frequency': 'Hz',
  'boosted-clean-step': 'step',
  'limiter-onset': 'step',
  'step-size': 'dB/step',
  'bass-boost-bandwidth': 'oct',
  'lower-corner': 'Hz',
  'lower-slope': 'dB/oct',
  'upper-corner': 'Hz',
  'upper-slope': 'dB/oct',
  'treble-tilt': 'dB',
  ripple: 'dB',
  'rear-to-front': 'dB',
  'left-to-right': 'dB',
  'source-resistance': 'Ω',
  'noise-floor': 'V',
};

export function characteristic(
  name: CharacteristicName,
  value: number,
  expandedUncertainty = 0,
  more: {
    readonly bound?: Bound;
    readonly at?: Partial<Conditions>;
    readonly readings?: readonly string[];
  } = {},
): Characteristic {
  return {
    name,
    value,
    unit: units[name],
    standardUncertainty: expandedUncertainty / 2,
    coverageFactor: 2,
    expandedUncertainty,
    bound: more.bound ?? 'exact',
    budget: [],
    conditions: { ...mainConditions, ...more.at },
    readings: more.readings ?? ['2026-03-quay:2'],
    sources: ['bench-2026-03-quay'],
  };
}

export function output(
  characteristics: readonly Characteristic[],
  more: Partial<ProfileOutput> = {},
): ProfileOutput {
  return {
    profile: 'family/code',
    characteristics,
    others: [],
    levelByStep: [],
    stepLaw: [],
    boostBehaviour: 'unknown',
    responses: [],
    mutedChannels: [],
    conditions: mainConditions,
    sessions: ['2026-03-quay'],
    normalised: [],
    agreement: undefined,
    missing: [],
    ...more,
  };
}

let demo: Promise<Answers> | undefined;

/** The answers of the demo content, read once. */
export function demoAnswers(): Promise<Answers> {
  demo ??= readAnswers(fileURLToPath(new URL('../../content/', import.meta.url))).then(
    ({ answers }) => answers,
  );
  return demo;
}

/** The views of all pages of a kind, of a site mounted at `/help/`. */
export async function allViews<Kind extends keyof PageViews>(
  answers: Answers,
  kind: Kind,
): Promise<ViewOf<Kind>[]> {
  const views = pageViews(answers, '/help/')[kind];
  const all = await Promise.all((await views.ids()).map((id) => views.get(id)));
  return all.map((view, at) => {
    if (view === undefined) throw new Error(`The page ${at} of ${kind} is not there.`);
    return view as ViewOf<Kind>;
  });
}

/** The kinds of entries that have a page of their own, by the kind of page. */
export const entryPageKinds = {
  profilePages: 'profiles',
  planPages: 'plans',
  tablePages: 'tables',
  sourcePages: 'sources',
  wayPages: 'sequences',
  unitPages: 'families',
  guidePages: 'guides',
} as const satisfies Partial<Record<keyof PageViews, keyof Answers['base']>>;

/** The views of all pages that entries have, those of readings included. */
export async function entryPages(answers: Answers) {
  const kinds = Object.keys(entryPageKinds) as (keyof typeof entryPageKinds)[];
  return (
    await Promise.all([...kinds, 'readingsPages' as const].map((kind) => allViews(answers, kind)))
  ).flat();
}
