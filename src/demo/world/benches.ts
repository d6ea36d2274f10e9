/** The shop's three benches. */
import type { DemoBench } from './types.ts';

export const benches: readonly DemoBench[] = [
  {
    id: 'north-bench',
    title: 'north bench',
    takenBy: 'Bench technician, north workshop',
    instrument: {
      name: 'True-rms bench multimeter, five and a half digits, with a separate distortion analyser',
      resolutionVolts: 0.0001,
      accuracy: [
        { fromHz: 10, toHz: 45, ofReadingPercent: 0.5, counts: 8 },
        { fromHz: 45, toHz: 9000, ofReadingPercent: 0.2, counts: 5 },
        { fromHz: 9000, toHz: 30_000, ofReadingPercent: 0.6, counts: 10 },
      ],
      thdFloorPercent: 0.02,
      thdOfReadingPercent: 5,
    },
    levelToleranceDb: 0.05,
    loadTolerancePercent: 0.5,
    repeatScatter: 0.0005,
    keptAt: 'North workshop, bench book, shelf 2',
    trust: 'high',
    trustReason: 'Our own readings with an instrument inside its calibration interval, raw sheet kept.',
  },
  {
    id: 'quay-bench',
    title: 'quay bench',
    takenBy: 'Bench technician, quay workshop',
    instrument: {
      name: 'True-rms bench multimeter, four and a half digits, with a sound-card distortion analyser',
      resolutionVolts: 0.001,
      accuracy: [
        { fromHz: 10, toHz: 45, ofReadingPercent: 0.8, counts: 4 },
        { fromHz: 45, toHz: 9000, ofReadingPercent: 0.5, counts: 3 },
        { fromHz: 9000, toHz: 30_000, ofReadingPercent: 1.5, counts: 6 },
      ],
      thdFloorPercent: 0.05,
      thdOfReadingPercent: 8,
    },
    levelToleranceDb: 0.1,
    loadTolerancePercent: 1,
    repeatScatter: 0.001,
    keptAt: 'Quay workshop, bench book, cabinet by the door',
    trust: 'high',
    trustReason: 'Our own readings with an instrument inside its calibration interval, raw sheet kept.',
  },
  {
    id: 'van-bench',
    title: 'van bench',
    takenBy: 'Mobile fitter, service van',
    instrument: {
      name: 'Hand-held true-rms multimeter, with a battery-run distortion meter',
      resolutionVolts: 0.001,
      accuracy: [
        { fromHz: 10, toHz: 45, ofReadingPercent: 1.5, counts: 5 },
        { fromHz: 45, toHz: 2200, ofReadingPercent: 0.9, counts: 4 },
        { fromHz: 2200, toHz: 30_000, ofReadingPercent: 3, counts: 10 },
      ],
      thdFloorPercent: 0.2,
      thdOfReadingPercent: 12,
    },
    levelToleranceDb: 0.2,
    loadTolerancePercent: 2,
    repeatScatter: 0.002,
    keptAt: 'Service van, bench book, copy in the north workshop',
    trust: 'medium',
    trustReason:
      'Our own readings, taken away from the workshop with a hand-held instrument and portable loads.',
  },
];

/** Level of the test tones of every session, dB of a full-scale sine (AES17), tolerance aside. */
export const signalLevelDbfs = 0;
