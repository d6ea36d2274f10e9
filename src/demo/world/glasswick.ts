/** Glasswick: the touch-only family. Bridged outputs, a dot-matrix screen, codes in hexadecimal form. */
import type { Tuning } from '../output-model.ts';
import type { DemoFamily } from './types.ts';

/** Flat, full range, front and rear alike, at a level any amplifier takes. Two codes carry it. */
const straightThrough: Tuning = { topVoltsRms: 5, ceilingVoltsRms: 4.6, rear: 0 };

export const glasswick: DemoFamily = {
  id: 'glasswick',
  ratedLoadOhms: 4,
  unit: {
    topology: 'bridged',
    lowestStep: 1,
    highestStep: 35,
    lowestStepMutes: false,
    stepDbAtBottom: 1.8,
    stepDbAtTop: 1.3,
    outputOhms: 0.2,
    railDropVolts: 1.4,
    noiseVoltsRms: 0.0007,
    baseThdPercent: 0.06,
    couplingHz: 12,
    rollOff: { hz: 18_000, order: 2 },
  },
  profiles: [
    {
      code: '0x7E8',
      otherSpellings: ['7E8'],
      origin: 'factory',
      system: 'unamplified',
      about:
        'The common profile without a factory amplifier. A broad bass boost up to the middle of the volume range, switched off above it. Loud, and not clean to the end.',
      sources: ['kestrane-bulletin-22-03'],
      tuning: {
        topVoltsRms: 14,
        boost: { shape: 'peak', hz: 70, gainDb: 8, q: 0.8, overVolume: { kind: 'off-above', step: 20 } },
        rear: 0,
      },
    },
    {
      code: '0x7B8',
      otherSpellings: ['7B8'],
      origin: 'factory',
      system: 'amplified',
      about:
        'For the first factory amplifier. Flat and low: made for an input that is more sensitive than those of most aftermarket amplifiers.',
      sources: ['kestrane-bulletin-22-03'],
      tuning: { topVoltsRms: 2.35, ceilingVoltsRms: 2.1, rear: 0 },
    },
    {
      code: '0x5B0',
      otherSpellings: ['5B0'],
      origin: 'factory',
      system: 'amplified',
      about:
        'For the second factory amplifier, and the profile an aftermarket amplifier asks for: flat over the whole range, nothing held back at the rear, clean until near the end of the knob, and neither faint nor hot.',
      sources: ['kestrane-bulletin-22-03'],
      tuning: straightThrough,
    },
    {
      code: '0x1D0',
      origin: 'dealer-update',
      system: 'unamplified',
      about:
        'A dealer update that trades the bass boost for level: the hottest clean output of the family. Behind it, the gain of an aftermarket amplifier belongs near its lowest setting.',
      sources: ['kestrane-bulletin-22-03'],
      tuning: {
        topVoltsRms: 15.8,
        boost: { shape: 'low-shelf', hz: 80, gainDb: 2, q: Math.SQRT1_2, overVolume: { kind: 'fixed' } },
        rear: 0,
      },
    },
    {
      code: '0xB81',
      otherSpellings: ['B81'],
      origin: 'dealer-update',
      system: 'amplified',
      about:
        'A dealer update for the factory amplifier that makes the rear channels itself. The front is flat; the rear outputs of the unit are silent.',
      sources: ['kestrane-bulletin-22-03'],
      tuning: { topVoltsRms: 3.6, ceilingVoltsRms: 3.8, rear: 'muted' },
    },
    {
      code: '0x6A2',
      origin: 'third-party',
      system: 'amplified',
      soldAs: ['Fairlead Stage One'],
      sameAs: 'glasswick/0x5b0',
      about:
        'Sold as the first stage of a staged upgrade. It is the factory profile for the second amplifier under its own code: a good choice for an aftermarket amplifier, and one the unit may already hold.',
      sources: ['telephone-notes-2026'],
      tuning: straightThrough,
    },
    {
      code: '0x0E1',
      origin: 'factory',
      system: 'unamplified',
      about:
        'For the narrow fairing with its small speakers. The high-pass is the steepest on our shelves and is on at every volume; what is below it is gone for good.',
      sources: ['kestrane-bulletin-22-03'],
      tuning: { topVoltsRms: 13.6, highPass: { hz: 150, order: 4 }, rear: 0 },
    },
    {
      code: '0x2F6',
      origin: 'third-party',
      system: 'unamplified',
      soldAs: ['Harbourline Deep', 'Harbourline Deep for Solvane'],
      about:
        'A tuning of its own, not a factory profile renamed: a heavy bass shelf at every volume and treble that falls towards the top. Warm at a standstill; on the road the shelf runs into clipping first.',
      sources: ['telephone-notes-2026'],
      tuning: {
        topVoltsRms: 12,
        boost: { shape: 'low-shelf', hz: 100, gainDb: 7.5, q: Math.SQRT1_2, overVolume: { kind: 'fixed' } },
        tiltDbPerOctave: -0.8,
        rear: 0,
      },
    },
  ],
};
