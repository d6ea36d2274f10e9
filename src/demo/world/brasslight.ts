/** Brasslight: the oldest family. Bridged outputs, slow processor, a tired output stage. */
import type { Tuning } from '../output-model.ts';
import type { DemoFamily } from './types.ts';

/** Loud, with a bass boost that is gone by the time the volume is high. Two codes carry it. */
const touringFairing: Tuning = {
  topVoltsRms: 23.5,
  boost: {
    shape: 'peak',
    hz: 63,
    gainDb: 9,
    q: 0.8,
    overVolume: { kind: 'fades', fromStep: 13, goneAtStep: 22 },
  },
  rear: 0,
};

export const brasslight: DemoFamily = {
  id: 'brasslight',
  ratedLoadOhms: 4,
  unit: {
    topology: 'bridged',
    lowestStep: 0,
    highestStep: 30,
    lowestStepMutes: true,
    stepDbAtBottom: 2,
    stepDbAtTop: 1.5,
    outputOhms: 0.25,
    railDropVolts: 2,
    noiseVoltsRms: 0.001,
    baseThdPercent: 0.14,
    couplingHz: 16,
    rollOff: { hz: 14_500, order: 1 },
  },
  profiles: [
    {
      code: '8B0S-I5Z',
      otherSpellings: ['8B0SI5Z'],
      origin: 'factory',
      system: 'unamplified',
      tellApart: [
        {
          from: 'brasslight/8b0s-15z',
          hint: 'First after the hyphen: a letter I with bars, not a figure one.',
        },
      ],
      about:
        'The profile most Ordwicks left the works with where no amplifier was ordered. Loud, and it clips well before the knob is at its end. Its bass boost is strong at low volume and gone at high volume, so a system set up by ear at a standstill sounds thin on the road.',
      sources: ['kestrane-bulletin-14-07'],
      tuning: touringFairing,
    },
    {
      code: '8B0S-15Z',
      origin: 'factory',
      system: 'amplified',
      tellApart: [
        {
          from: 'brasslight/8b0s-i5z',
          hint: 'First after the hyphen: a plain figure one, not a letter I with bars.',
        },
      ],
      about:
        'The profile for Ordwicks with the factory amplifier. Flat, and held to a low level because the amplifier behind it does the rest; on bare speakers it is hardly to be heard on the road. One character away from the un-amplified profile that most Ordwicks carry.',
      sources: ['kestrane-bulletin-14-07'],
      tuning: { topVoltsRms: 2.8, ceilingVoltsRms: 2.1, rear: 0 },
    },
    {
      code: '2Z6G-0O8',
      origin: 'factory',
      system: 'unamplified',
      about:
        'Made for the small fairing speakers of the first years. A steep high-pass keeps the low bass away from them, at every volume. An amplifier behind it gets no bass to work with, and no equaliser brings back what is not there.',
      sources: ['kestrane-bulletin-14-07'],
      tuning: { topVoltsRms: 14, highPass: { hz: 125, order: 3 }, rear: 0 },
    },
    {
      code: '5S1I-B80',
      otherSpellings: ['5S1IB80'],
      origin: 'dealer-update',
      system: 'amplified',
      about:
        'A dealer update for machines whose rear speakers were taken over by the factory amplifier. The rear outputs of the unit are silent; an amplifier wired to them gets nothing.',
      sources: ['kestrane-bulletin-14-07'],
      tuning: { topVoltsRms: 4.8, ceilingVoltsRms: 4.2, rear: 'muted' },
    },
    {
      code: 'G60D-2ZS',
      origin: 'dealer-update',
      system: 'unamplified',
      about:
        'A dealer update against dull sound behind a tall screen: treble rises towards the top, and a gentle shelf in the bass stays on at every volume.',
      sources: ['kestrane-bulletin-14-07'],
      tuning: {
        topVoltsRms: 11.8,
        boost: { shape: 'low-shelf', hz: 90, gainDb: 4, q: Math.SQRT1_2, overVolume: { kind: 'fixed' } },
        tiltDbPerOctave: 1,
        rear: 0,
      },
    },
    {
      code: 'I1L0-S5G',
      origin: 'third-party',
      system: 'unamplified',
      soldAs: ['Longroad Clear', 'Longroad Clear Two'],
      sameAs: 'brasslight/8b0s-i5z',
      about:
        'Sold as a tuning for louder, clearer sound. On the bench it is the un-amplified factory profile under another code, fading bass boost and all.',
      sources: ['telephone-notes-2026'],
      tuning: touringFairing,
    },
    {
      code: 'B5Z2-8O0',
      origin: 'factory',
      system: 'amplified',
      about:
        'For the factory amplifier of machines with a top box: front flat, rear turned down so that the passenger’s speakers do not shout at the rider. It stays clean to the last step.',
      sources: ['kestrane-bulletin-14-07'],
      tuning: { topVoltsRms: 3.1, ceilingVoltsRms: 3.3, rear: -6 },
    },
  ],
};
