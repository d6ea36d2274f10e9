/** A bench session: the conditions under which a sheet of readings was taken. */
import { z } from 'zod';
import { date, hz, line, paragraph, reference, slug } from '../common.ts';

const accuracyBand = z.strictObject({
  fromHz: hz.meta({ description: 'Lowest frequency this specification holds for.' }),
  toHz: hz.meta({ description: 'Highest frequency it holds for.' }),
  ofReadingPercent: z
    .number()
    .min(0)
    .max(20)
    .meta({ description: 'Limit of error as a percentage of the reading (±).' }),
  counts: z
    .number()
    .min(0)
    .max(1000)
    .meta({ description: 'Limit of error in counts of the last digit (±).' }),
});

export const sessionSchema = z
  .strictObject({
    source: reference('sources/').meta({ description: 'The source entry this session is cited as.' }),
    date: date.meta({ description: 'The day the readings were taken.' }),
    bench: slug.meta({ description: 'Which bench: one name per place and set of instruments.' }),
    takenBy: line.meta({ description: 'Who took the readings, by role, never by name.' }),
    instrument: z
      .strictObject({
        name: line.meta({ description: 'What the voltmeter is, in general terms.' }),
        resolutionVolts: z
          .number()
          .positive()
          .max(1)
          .meta({ description: 'One count of the last digit, volts.' }),
        accuracy: z
          .array(accuracyBand)
          .min(1)
          .meta({ description: 'Accuracy specification by frequency band: ± (% of reading + counts).' }),
        thdFloorPercent: z
          .number()
          .positive()
          .max(10)
          .optional()
          .meta({ description: 'The lowest THD the analyser can tell, per cent. Absent: no THD taken.' }),
        thdOfReadingPercent: z
          .number()
          .positive()
          .max(50)
          .optional()
          .meta({ description: 'Limit of error of a THD reading, per cent of it (±).' }),
      })
      .meta({ description: 'The instrument and its specification.' }),
    signal: z
      .strictObject({
        kind: z.enum(['sine', 'noise', 'sweep']).meta({ description: 'What was played.' }),
        levelDbfs: z
          .number()
          .min(-60)
          .max(0)
          .meta({ description: 'Its level, dB of a full-scale sine (AES17).' }),
        levelToleranceDb: z
          .number()
          .min(0)
          .max(3)
          .meta({ description: 'Limit of error of that level (±), dB.' }),
        from: line.meta({ description: 'How it got into the unit.' }),
      })
      .meta({ description: 'The test signal.' }),
    load: z
      .strictObject({
        ohms: z.number().positive().max(1_000_000).meta({ description: 'Load per channel, ohms.' }),
        tolerancePercent: z
          .number()
          .min(0)
          .max(20)
          .meta({ description: 'Limit of error of the load (±), per cent.' }),
      })
      .meta({ description: 'What the outputs were loaded with.' }),
    supply: z
      .strictObject({
        volts: z.number().min(8).max(18).meta({ description: 'Supply at the unit’s terminals, volts DC.' }),
        toleranceVolts: z.number().min(0).max(2).meta({ description: 'Limit of error of it (±), volts.' }),
      })
      .meta({ description: 'What the unit was fed with.' }),
    method: paragraph.meta({ description: 'How it was done, so that another bench could repeat it.' }),
    setAside: z
      .array(
        z.strictObject({
          profiles: z
            .array(reference('profiles/'))
            .min(1)
            .optional()
            .meta({ description: 'The profiles whose readings are set aside; absent: all of the session.' }),
          reason: paragraph.meta({ description: 'Why; shown on the page of each profile.' }),
          by: line.meta({ description: 'Who decided, by role.' }),
          date: date.meta({ description: 'The day it was decided.' }),
        }),
      )
      .default([])
      .meta({ description: 'Readings kept but not used: only here, and only with a reason.' }),
  })
  .meta({
    title: 'Bench session',
    description: 'Conditions of a sheet of readings: outputs/<session>/session.yaml.',
  });

export type Session = z.infer<typeof sessionSchema>;
export type SetAside = Session['setAside'][number];
