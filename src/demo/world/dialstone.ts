/** Dialstone: seven-segment screen, outputs against ground, so half the swing of the other families. */
import type { Tuning } from '../output-model.ts';
import type { DemoFamily } from './types.ts';

/** A bass shelf at every volume. Two codes carry it. */
const steadyShelf: Tuning = {
  topVoltsRms: 6.25,
  boost: { shape: 'low-shelf', hz: 90, gainDb: 7.1, q: Math.SQRT1_2, overVolume: { kind: 'fixed' } },
  rear: 0,
};

export const dialstone: DemoFamily = {
  id: 'dialstone',
  ratedLoadOhms: 4,
  unit: {
    topology: 'ground-referenced',
    lowestStep: 1,
    highestStep: 25,
    lowestStepMutes: false,
    stepDbAtBottom: 2.2,
    stepDbAtTop: 1.6,
    outputOhms: 0.3,
    railDropVolts: 0.8,
    noiseVoltsRms: 0.0008,
    baseThdPercent: 0.11,
    couplingHz: 18,
    rollOff: { hz: 15_000, order: 2 },
  },
  profiles: [
    {
      code: '1.10',
      otherSpellings: ['110'],
      origin: 'factory',
      system: 'unamplified',
      about:
        'The common profile of Tarrowby and Pellmoor without a factory amplifier. A bass shelf that stays on at every volume: what is heard at a standstill is what is heard on the road, only louder, and the bass is the first to clip.',
      sources: ['kestrane-bulletin-14-07'],
      tuning: steadyShelf,
    },
    {
      code: '1.1E',
      origin: 'factory',
      system: 'amplified',
      about:
        'For the factory amplifier. Flat front and rear and the lowest output of the family: an aftermarket amplifier needs its gain well up behind it.',
      sources: ['kestrane-bulletin-14-07'],
      tuning: { topVoltsRms: 2, ceilingVoltsRms: 1.75, rear: 0 },
    },
    {
      code: '5.08',
      origin: 'dealer-update',
      system: 'unamplified',
      about:
        'A dealer update after complaints of rattling fairing speakers. It takes the low bass out at every volume and changes nothing else.',
      sources: ['kestrane-bulletin-14-07'],
      tuning: { topVoltsRms: 5.2, highPass: { hz: 100, order: 2 }, rear: 0 },
    },
    {
      code: '8.b2',
      otherSpellings: ['8.B2'],
      origin: 'factory',
      system: 'amplified',
      about:
        'For the factory amplifier with passenger speakers: flat, with the rear somewhat below the front. The screen shows its letter as a small b, because a large one would be an eight.',
      sources: ['kestrane-bulletin-14-07'],
      tuning: { topVoltsRms: 2.4, ceilingVoltsRms: 2.5, rear: -4 },
    },
    {
      code: '2.E5',
      origin: 'factory',
      system: 'unamplified',
      about:
        'The bass-heavy profile of the early Solvane. The boost is full up to the middle of the volume range and switched off above it, all at once; riders take the drop for a fault.',
      sources: ['kestrane-bulletin-14-07'],
      tuning: {
        topVoltsRms: 6,
        boost: { shape: 'peak', hz: 63, gainDb: 8, q: 0.9, overVolume: { kind: 'off-above', step: 14 } },
        rear: 0,
      },
    },
    {
      code: '6.00',
      origin: 'third-party',
      system: 'unamplified',
      soldAs: ['Marrow Lane Bass'],
      sameAs: 'dialstone/1-10',
      about:
        'Sold as a bass tuning. On the bench it does what the common un-amplified factory profile does, no more.',
      sources: ['telephone-notes-2026'],
      tuning: steadyShelf,
    },
  ],
};
