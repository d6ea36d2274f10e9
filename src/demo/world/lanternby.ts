/** Lanternby: the variant with a knob and no touch, made for low-impedance speakers. Bridged outputs. */
import type { DemoFamily } from './types.ts';

export const lanternby: DemoFamily = {
  id: 'lanternby',
  ratedLoadOhms: 2,
  unit: {
    topology: 'bridged',
    lowestStep: 1,
    highestStep: 32,
    lowestStepMutes: false,
    stepDbAtBottom: 1.8,
    stepDbAtTop: 1.3,
    outputOhms: 0.1,
    railDropVolts: 1,
    noiseVoltsRms: 0.0006,
    baseThdPercent: 0.04,
    couplingHz: 10,
    rollOff: { hz: 22_000, order: 2 },
  },
  profiles: [
    {
      code: '1E5028',
      origin: 'factory',
      system: 'amplified',
      about:
        'For the factory amplifier. Flat front and rear, at a middling level, clean until the last steps. It suits an aftermarket amplifier as it is.',
      sources: ['kestrane-unit-data-sheet'],
      tuning: { topVoltsRms: 4.3, ceilingVoltsRms: 3.9, rear: 0 },
    },
    {
      code: 'S5B80G',
      origin: 'factory',
      system: 'unamplified',
      about:
        'The common profile without a factory amplifier: hot, with a small bass shelf that stays on. The last quarter of the knob is of no use to anything that is to stay clean.',
      sources: ['kestrane-unit-data-sheet'],
      tuning: {
        topVoltsRms: 26.5,
        boost: { shape: 'low-shelf', hz: 80, gainDb: 3, q: Math.SQRT1_2, overVolume: { kind: 'fixed' } },
        rear: 0,
      },
    },
    {
      code: '0O16Z2',
      otherSpellings: ['0O16-Z2'],
      origin: 'factory',
      system: 'amplified',
      about:
        'For the small factory amplifier. Low output, rear slightly below front. It begins with a figure nought and a letter O, in this order; the letter is the rounder of the two.',
      sources: ['kestrane-unit-data-sheet'],
      tuning: { topVoltsRms: 1.9, ceilingVoltsRms: 2, rear: -2 },
    },
    {
      code: '2Z6I1B',
      origin: 'third-party',
      system: 'unamplified',
      soldAs: ['Harbourline Touring'],
      about:
        'A tuning of its own for full-range speakers: the lowest bass is taken out to spare them, a boost above that warms them at low volume and goes as the volume rises.',
      sources: ['telephone-notes-2026'],
      tuning: {
        topVoltsRms: 10.6,
        boost: {
          shape: 'peak',
          hz: 90,
          gainDb: 5,
          q: 0.9,
          overVolume: { kind: 'fades', fromStep: 14, goneAtStep: 26 },
        },
        highPass: { hz: 50, order: 2 },
        rear: 0,
      },
    },
  ],
};
