/** Northpane: the large touch screen with keys. Bridged outputs, the quietest and widest of the families. */
import type { Tuning } from '../output-model.ts';
import type { DemoFamily } from './types.ts';

/** Flat and clean to the last step. Two codes carry it. */
const levelGround: Tuning = { topVoltsRms: 4.3, ceilingVoltsRms: 4.5, rear: 0 };

export const northpane: DemoFamily = {
  id: 'northpane',
  ratedLoadOhms: 4,
  unit: {
    topology: 'bridged',
    lowestStep: 0,
    highestStep: 40,
    lowestStepMutes: true,
    stepDbAtBottom: 1.7,
    stepDbAtTop: 1.1,
    outputOhms: 0.12,
    railDropVolts: 1.2,
    noiseVoltsRms: 0.0005,
    baseThdPercent: 0.03,
    couplingHz: 8,
    rollOff: { hz: 24_000, order: 2 },
  },
  profiles: [
    {
      code: 'OS518-B2.10',
      otherSpellings: ['OS518-B2'],
      origin: 'factory',
      system: 'amplified',
      about:
        'For the factory amplifier of the large machines. Flat, full range, rear like front, and clean to the last step: the profile to hope for behind an aftermarket amplifier.',
      sources: ['kestrane-bulletin-22-03'],
      tuning: levelGround,
    },
    {
      code: 'ZB802-0S.01',
      origin: 'factory',
      system: 'unamplified',
      about:
        'The common profile without a factory amplifier. Hot at the end of the knob, with a bass boost that fades as the volume rises. First revision, never replaced.',
      sources: ['kestrane-bulletin-22-03'],
      tuning: {
        topVoltsRms: 15,
        boost: {
          shape: 'peak',
          hz: 60,
          gainDb: 7,
          q: 0.8,
          overVolume: { kind: 'fades', fromStep: 17, goneAtStep: 32 },
        },
        rear: 0,
      },
    },
    {
      code: 'GI106-I5.20',
      origin: 'factory',
      system: 'amplified',
      about:
        'For the small factory amplifier under the seat. Low output, flat, with the rear a little below the front.',
      sources: ['kestrane-bulletin-22-03'],
      tuning: { topVoltsRms: 2, ceilingVoltsRms: 2.1, rear: -3 },
    },
    {
      code: 'OS581-8Z.10',
      origin: 'factory',
      system: 'unamplified',
      about:
        'For machines with the large fairing speakers: a moderate bass shelf at every volume, and enough level that the last steps clip.',
      sources: ['kestrane-bulletin-22-03'],
      tuning: {
        topVoltsRms: 11.6,
        boost: { shape: 'low-shelf', hz: 85, gainDb: 5, q: Math.SQRT1_2, overVolume: { kind: 'fixed' } },
        rear: 0,
      },
    },
    {
      code: 'SO150-G6.10',
      otherSpellings: ['SO150-G6'],
      origin: 'dealer-update',
      system: 'amplified',
      about:
        'A dealer update for the amplifier that makes its own rear channels. Flat front, silent rear. Its number looks like that of no other profile, but its letters are easily swapped when read out over the telephone.',
      sources: ['kestrane-bulletin-22-03'],
      tuning: { topVoltsRms: 3.5, ceilingVoltsRms: 3.2, rear: 'muted' },
    },
    {
      code: 'BZ268-1I.30',
      origin: 'third-party',
      system: 'amplified',
      soldAs: ['Fairlead Stage Two'],
      sameAs: 'northpane/os518-b2-10',
      about:
        'Sold as the second stage of a staged upgrade. Electrically it is the factory profile for the large amplifier; where the unit already runs that one, there is nothing to gain.',
      sources: ['telephone-notes-2026'],
      tuning: levelGround,
    },
    {
      code: 'IG619-O8.00',
      origin: 'dealer-update',
      system: 'unamplified',
      about:
        'A dealer update for machines with a tall screen: brighter treble and a high-pass that spares the speakers. Bass is missing at every volume.',
      sources: ['kestrane-bulletin-22-03'],
      tuning: { topVoltsRms: 11.5, highPass: { hz: 90, order: 3 }, tiltDbPerOctave: 0.7, rear: 0 },
    },
  ],
};
