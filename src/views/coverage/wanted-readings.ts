/** From what is wanted to the readings to take: channel, step, frequency, load, repeat. */
import type { Channel } from '../../../schemas/index.ts';
import type { Answers } from '../../answers.ts';
import {
  audibleBands,
  type Characteristic,
  type CharacteristicName,
  nearestBand,
  type ProfileOutput,
  sheetCentres,
  underMainConditions,
} from '../../measure/index.ts';
import { decidingValue, type Wanted } from './wanted.ts';

/** One row of a sheet to fill in. */
export interface WantedReading {
  readonly profile: string;
  readonly channel: Channel;
  readonly step: number;
  readonly hz: number;
  readonly loadOhms: number;
  readonly repeat: number;
}

/** What was measured once and is too near a limit is read so many times over: common practice, no source. */
export const repeatsOfBorderline = 3;

const [lowest, highest] = audibleBands;
/** 20 to 250 Hz: where bass is looked for. */
const bass = [...sheetCentres(lowest, -6), 1000];

interface Plan {
  readonly channels: 'front' | 'front pair' | 'front and rear';
  /** Every step of the scale, those about the highest clean one, the one of a response, two of them, the lowest. */
  readonly steps: 'scale' | 'one' | 'two' | 'lowest';
  readonly hz: readonly number[];
}

const scale: Plan = { channels: 'front', steps: 'scale', hz: [1000] };
const bassAtTwo: Plan = { channels: 'front', steps: 'two', hz: bass };
const treble: Plan = { channels: 'front', steps: 'one', hz: sheetCentres(0, highest) };
const lowEnd: Plan = { channels: 'front', steps: 'one', hz: sheetCentres(lowest, 0) };

/** What each characteristic is computed from: the same as `neededFor` of measure, in rows. */
const plans: Readonly<Record<CharacteristicName, Plan>> = {
  'clean-volts': scale,
  'highest-clean-step': scale,
  'boosted-clean-step': bassAtTwo,
  'limiter-onset': scale,
  'step-size': scale,
  'bass-boost': bassAtTwo,
  'bass-boost-frequency': bassAtTwo,
  'bass-boost-bandwidth': bassAtTwo,
  'lower-corner': lowEnd,
  'lower-slope': lowEnd,
  'upper-corner': treble,
  'upper-slope': treble,
  'treble-tilt': { channels: 'front', steps: 'one', hz: [1000, 10000] },
  ripple: { channels: 'front', steps: 'one', hz: sheetCentres(-5, 7) },
  'rear-to-front': { channels: 'front and rear', steps: 'one', hz: [1000] },
  'left-to-right': { channels: 'front pair', steps: 'one', hz: [1000] },
  'source-resistance': { channels: 'front', steps: 'one', hz: [1000] },
  'noise-floor': { channels: 'front', steps: 'lowest', hz: [1000] },
};

/** Every reading wanted, once, in the order a bench would take them: load, profile, channel, step, frequency, repeat. */
export function wantedReadings(answers: Answers, wanted: readonly Wanted[]): WantedReading[] {
  const rows = new Map<string, WantedReading>();
  for (const one of wanted) {
    for (const row of readingsFor(answers, one)) rows.set(JSON.stringify(row), row);
  }
  const channels: readonly Channel[] = ['FL', 'FR', 'RL', 'RR'];
  return [...rows.values()].sort(
    (a, b) =>
      a.loadOhms - b.loadOhms ||
      a.profile.localeCompare(b.profile, 'en') ||
      channels.indexOf(a.channel) - channels.indexOf(b.channel) ||
      a.step - b.step ||
      a.hz - b.hz ||
      a.repeat - b.repeat,
  );
}

/** The readings that one characteristic of a profile is computed from; none where its unit is not known. */
export function readingsFor(answers: Answers, { profile, characteristic, state }: Wanted): WantedReading[] {
  const entry = answers.base.profiles.get(profile);
  const family = answers.base.families.get(entry?.data.family ?? '')?.data;
  const output = answers.outputs.get(profile);
  if (!family || !output) return [];
  const plan = plans[characteristic];
  const steps = stepsOf(plan, characteristic, output, family.volume, state);
  const frequencies = state === 'borderline' ? about(plan, decidingValue(output, characteristic)) : plan.hz;
  const load = output.conditions?.loadOhms ?? family.output.ratedLoadOhms;
  // The resistance of an output shows between two loads.
  const loads = characteristic === 'source-resistance' ? [load, 2 * load] : [load];
  const repeats = state === 'borderline' ? repeatsOfBorderline : 1;
  return channelsOf(plan, family.output.channels).flatMap((channel) =>
    steps.flatMap((step) =>
      frequencies.flatMap((hz) =>
        loads.flatMap((loadOhms) =>
          Array.from({ length: repeats }, (_, at) => ({
            profile,
            channel,
            step,
            hz,
            loadOhms,
            repeat: at + 1,
          })),
        ),
      ),
    ),
  );
}

/**
 * The frequencies that bear on a value already known roughly: two bands either way of where it is, and 1 kHz, which it
 * is told against; all of them where it is at no one frequency.
 */
function about({ hz }: Plan, value: Characteristic | undefined): readonly number[] {
  const at = value?.unit === 'Hz' ? value.value : value?.conditions.hz;
  if (at === undefined || hz.length < 2) return hz;
  return hz.filter((one) => one === 1000 || Math.abs(nearestBand(one) - nearestBand(at)) <= 2);
}

function channelsOf({ channels }: Plan, there: readonly Channel[]): Channel[] {
  const wanted: readonly Channel[] =
    channels === 'front' ? ['FL'] : channels === 'front pair' ? ['FL', 'FR'] : ['FL', 'RL', 'RR'];
  return wanted.filter((channel) => there.includes(channel));
}

function stepsOf(
  { steps }: Plan,
  characteristic: CharacteristicName,
  output: ProfileOutput,
  volume: { readonly lowestStep: number; readonly highestStep: number },
  state: Wanted['state'],
): number[] {
  const { lowestStep, highestStep } = volume;
  const clean = output.characteristics.find(({ name }) => name === 'highest-clean-step')?.value;
  const within = (all: readonly number[]): number[] => [
    ...new Set(all.filter((step) => step >= lowestStep && step <= highestStep)),
  ];
  if (steps === 'lowest') return [lowestStep];
  if (steps === 'scale') {
    return clean !== undefined && state === 'borderline'
      ? within([clean - 1, clean, clean + 1])
      : Array.from({ length: highestStep - lowestStep + 1 }, (_, at) => lowestStep + at);
  }
  // Where nothing tells which steps are clean, the middle of the scale is a beginning.
  const middle = Math.round((lowestStep + (clean ?? highestStep)) / 2);
  const known = decidingValue(output, characteristic);
  if (state === 'borderline' && known?.conditions.step !== undefined) {
    return characteristic === 'bass-boost' ? stepsOfGreatest(output, known) : [known.conditions.step];
  }
  return steps === 'two' ? within([middle, clean ?? Math.round((middle + highestStep) / 2)]) : [middle];
}

/** The greatest boost is known only once it is known of every step at which it may be. */
function stepsOfGreatest(output: ProfileOutput, greatest: Characteristic): number[] {
  const least = greatest.value - greatest.expandedUncertainty;
  const steps = underMainConditions(output, 'bass-boost')
    .filter(({ value, expandedUncertainty }) => value + expandedUncertainty >= least)
    .flatMap(({ conditions }) => conditions.step ?? []);
  return [...new Set(steps)].sort((a, b) => a - b);
}
