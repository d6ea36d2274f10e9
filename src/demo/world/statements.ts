/** What bulletins, sheets and riders say of the profiles. The numbers follow from the truth, rounded as spoken. */
import type { Statement } from '../../../schemas/index.ts';
import {
  bassBoostDb,
  cleanVolts,
  highestCleanStep,
  highestStepCleanThroughout,
  isMuted,
  lowerCornerHz,
  rearToFrontDb,
  upperCornerHz,
} from '../truth.ts';

/** A statement with the name of its file. */
export interface DemoStatement extends Statement {
  readonly id: string;
}

/** Rounds to the nearest whole multiple of unit, as a writer of bulletins would. */
function spoken(value: number, unit: number): number {
  return Number((Math.round(value / unit) * unit).toPrecision(6));
}

/** A value that must exist for the statement to make sense. */
function given(value: number | null, what: string): number {
  if (value === null) throw new Error(`A demo statement speaks of ${what}, which its profile does not have.`);
  return value;
}

const boost = (profile: string) => spoken(bassBoostDb(profile, highestStepCleanThroughout(profile)), 0.5);
const clean = (profile: string) => spoken(cleanVolts(profile), 0.1);
const lower = (profile: string) =>
  spoken(given(lowerCornerHz(profile, highestStepCleanThroughout(profile)), 'a lower corner'), 5);
const upper = (profile: string) =>
  spoken(given(upperCornerHz(profile, highestStepCleanThroughout(profile)), 'an upper corner'), 500);
const rear = (profile: string) => spoken(given(rearToFrontDb(profile), 'a rear level'), 0.5);

/** Both rear outputs of a profile as muted or not. */
const rearSilence = (profile: string): Statement['claims'] =>
  (['RL', 'RR'] as const).map((channel) => ({
    profile,
    trait: 'muted',
    channel,
    value: isMuted(profile, channel),
  }));

/** The statements, made anew at each call so that nothing is computed on import. */
export function demoStatements(): DemoStatement[] {
  const steadyShelf = 'dialstone/1-10';
  const smallSpeakers = 'brasslight/2z6g-0o8';
  const topBox = 'brasslight/b5z2-8o0';
  const narrowFairing = 'glasswick/0x0e1';
  const secondAmplifier = 'glasswick/0x5b0';
  const tallScreen = 'northpane/ig619-o8-00';
  const underSeat = 'northpane/gi106-i5-20';
  const lanternbyAmplified = 'lanternby/1e5028';
  const lanternbyBare = 'lanternby/s5b80g';
  const lanternbySmall = 'lanternby/0o16z2';
  const ordwick = 'brasslight/8b0s-i5z';
  return [
    {
      id: 'bulletin-14-07-dialstone-bass',
      source: 'kestrane-bulletin-14-07',
      quote: `Profile 1.10 raises the low frequencies by ${boost(steadyShelf)} dB at all positions of the volume control. Undistorted output into the rated load is ${clean(steadyShelf)} V.`,
      claims: [
        { profile: steadyShelf, trait: 'bass-boost', valueDb: boost(steadyShelf), toleranceDb: 0.5 },
        { profile: steadyShelf, trait: 'clean-volts', valueVolts: clean(steadyShelf), toleranceVolts: 0.3 },
      ],
    },
    {
      id: 'bulletin-14-07-brasslight-rear',
      source: 'kestrane-bulletin-14-07',
      quote: `With profile 5S1I-B80 the rear outputs are switched off; the factory amplifier supplies the rear speakers. With profile B5Z2-8O0 the rear is ${-rear(topBox)} dB below the front.`,
      claims: [
        ...rearSilence('brasslight/5s1i-b80'),
        { profile: topBox, trait: 'rear-to-front', valueDb: rear(topBox), toleranceDb: 0.5 },
        ...rearSilence(topBox),
      ],
    },
    {
      id: 'bulletin-14-07-brasslight-high-pass',
      source: 'kestrane-bulletin-14-07',
      quote: `Profile 2Z6G-0O8 protects the fairing speakers below ${lower(smallSpeakers)} Hz.`,
      claims: [
        { profile: smallSpeakers, trait: 'lower-corner', valueHz: lower(smallSpeakers), toleranceHz: 10 },
      ],
    },
    {
      id: 'bulletin-22-03-rear-outputs',
      source: 'kestrane-bulletin-22-03',
      quote: `Where the amplifier generates the rear channels (profiles 0xB81 and SO150-G6.10), the rear outputs of the unit carry no signal. Profile GI106-I5.20 keeps them, ${-rear(underSeat)} dB below the front.`,
      claims: [
        ...rearSilence('glasswick/0xb81'),
        ...rearSilence('northpane/so150-g6-10'),
        { profile: underSeat, trait: 'rear-to-front', valueDb: rear(underSeat), toleranceDb: 0.5 },
      ],
    },
    {
      id: 'bulletin-22-03-high-pass',
      source: 'kestrane-bulletin-22-03',
      quote: `Low frequencies are removed below ${lower(narrowFairing)} Hz (profile 0x0E1) and below ${lower(tallScreen)} Hz (profile IG619-O8.00).`,
      claims: [
        { profile: narrowFairing, trait: 'lower-corner', valueHz: lower(narrowFairing), toleranceHz: 10 },
        { profile: tallScreen, trait: 'lower-corner', valueHz: lower(tallScreen), toleranceHz: 8 },
      ],
    },
    {
      id: 'data-sheet-glasswick',
      source: 'kestrane-unit-data-sheet',
      quote: `Glasswick, profile 0x5B0: ${clean(secondAmplifier)} V at rated load without audible distortion, response to ${upper(secondAmplifier)} Hz.`,
      claims: [
        {
          profile: secondAmplifier,
          trait: 'clean-volts',
          valueVolts: clean(secondAmplifier),
          toleranceVolts: 0.3,
        },
        {
          profile: secondAmplifier,
          trait: 'upper-corner',
          valueHz: upper(secondAmplifier),
          toleranceHz: 1500,
        },
      ],
    },
    {
      id: 'data-sheet-lanternby',
      source: 'kestrane-unit-data-sheet',
      quote: `Lanternby: ${clean(lanternbyAmplified)} V into the rated load with profile 1E5028; profile S5B80G adds ${boost(lanternbyBare)} dB of bass; profile 0O16Z2 sets the rear ${-rear(lanternbySmall)} dB back.`,
      claims: [
        {
          profile: lanternbyAmplified,
          trait: 'clean-volts',
          valueVolts: clean(lanternbyAmplified),
          toleranceVolts: 0.3,
        },
        { profile: lanternbyBare, trait: 'bass-boost', valueDb: boost(lanternbyBare), toleranceDb: 0.5 },
        { profile: lanternbySmall, trait: 'rear-to-front', valueDb: rear(lanternbySmall), toleranceDb: 0.5 },
      ],
    },
    {
      id: 'riders-report-ordwick-clean-step',
      source: 'riders-report-ordwick-2025',
      quote: `Mine shows 8B0S-I5Z. With my test tones it is clean up to step ${highestCleanStep(ordwick)}; one more and it growls.`,
      claims: [
        {
          profile: ordwick,
          trait: 'highest-clean-step',
          valueStep: highestCleanStep(ordwick),
          toleranceSteps: 1,
        },
      ],
    },
    {
      id: 'telephone-notes-glasswick-update',
      source: 'telephone-notes-2026',
      quote: `After the update to 0x1D0 it is loud enough by far, front and back alike. Past step ${highestCleanStep('glasswick/0x1d0')} it gets rough.`,
      claims: [
        {
          profile: 'glasswick/0x1d0',
          trait: 'highest-clean-step',
          valueStep: highestCleanStep('glasswick/0x1d0'),
          toleranceSteps: 2,
        },
        {
          profile: 'glasswick/0x1d0',
          trait: 'rear-to-front',
          valueDb: rear('glasswick/0x1d0'),
          toleranceDb: 1,
        },
      ],
    },
  ];
}
