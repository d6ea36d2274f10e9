/** A session's sheet: which readings a bench takes of a profile, and what it reads. */
import type { Channel, Reading } from '../../schemas/index.ts';
import { drawSessionErrors, readThdPercent, readVolts } from './bench.ts';
import { randomStream } from './random.ts';
import { highestStepCleanThroughout, thirdOctavesHz, trueOutput, volumeSteps } from './truth.ts';
import { type DemoSession, findBench, findProfile, signalLevelDbfs } from './world/index.ts';

/** Every number drawn for the demo follows from this one. */
export const demoSeed = 20_240_213;

/** A place on the sheet that a reading belongs in. */
interface Slot {
  readonly channel: Channel;
  readonly step: number;
  readonly hz: number;
  readonly withThd: boolean;
  readonly repeat: number;
}

/** Bass frequencies the other outputs are tried at, exact third-octaves next to 63 Hz and 100 Hz. */
const bassHz: readonly number[] = thirdOctavesHz.filter(
  (hz) => (hz > 60 && hz < 65) || (hz > 95 && hz < 105),
);

/** The low, middle and high step a response is taken at. */
export function responseSteps(profileId: string, session: DemoSession): [number, number, number] {
  const high = highestStepCleanThroughout(profileId, {
    supplyVolts: session.supply.volts,
    loadOhms: session.loadOhms,
  });
  const { highestStep } = findProfile(profileId).family.unit;
  const low = Math.min(Math.round(highestStep * 0.4), high - 6);
  return [low, Math.round((low + high) / 2), high];
}

function slotsOf(profileId: string, session: DemoSession): Slot[] {
  const steps = volumeSteps(profileId);
  const response = responseSteps(profileId, session);
  const highest = steps.at(-1) ?? 0;
  const repeated = new Set([...response, Math.round(highest / 5)]);
  const sweep = steps.flatMap((step) =>
    (repeated.has(step) ? [1, 2, 3] : [1]).map(
      (repeat): Slot => ({ channel: 'FL', step, hz: 1000, withThd: true, repeat }),
    ),
  );
  // 1 kHz belongs to the response, but at these steps the sweep has read it already.
  const curve = response.flatMap((step) =>
    thirdOctavesHz
      .filter((hz) => hz !== 1000)
      .map((hz): Slot => ({ channel: 'FL', step, hz, withThd: false, repeat: 1 })),
  );
  const others = (['FR', 'RL', 'RR'] as const).flatMap((channel) => [
    ...response.map((step): Slot => ({ channel, step, hz: 1000, withThd: false, repeat: 1 })),
    ...bassHz.map((hz): Slot => ({ channel, step: response[1], hz, withThd: false, repeat: 1 })),
  ]);
  return [...sweep, ...curve, ...others];
}

/** Rounds to six significant digits, as frequencies are written on the sheet. */
export function asWrittenHz(hz: number): number {
  return Number(hz.toPrecision(6));
}

/** All readings of a session, in the order they were taken. */
export function sheetOf(session: DemoSession): Reading[] {
  const bench = findBench(session.bench);
  const errors = drawSessionErrors(
    bench.instrument,
    {
      levelDb: bench.levelToleranceDb,
      loadPercent: bench.loadTolerancePercent,
      supplyVolts: session.supply.toleranceVolts,
    },
    randomStream(demoSeed, `session ${session.id}`),
  );
  const conditions = {
    supplyVolts: session.supply.volts + errors.supplyVolts,
    loadOhms: session.loadOhms * (1 + errors.loadRatio),
    levelDbfs: signalLevelDbfs + errors.levelDb,
  };
  return session.profiles.flatMap((profile) =>
    slotsOf(profile, session).map((slot): Reading => {
      const hz = asWrittenHz(slot.hz);
      const truth = trueOutput(profile, slot.channel, slot.step, hz, conditions);
      const random = randomStream(
        demoSeed,
        [session.id, profile, slot.channel, slot.step, hz, slot.repeat].join(' '),
      );
      return {
        profile,
        channel: slot.channel,
        step: slot.step,
        hz,
        voltsRms: readVolts(bench.instrument, errors, truth.voltsRms, hz, bench.repeatScatter, random),
        thdPercent:
          slot.withThd && truth.thdPercent !== null
            ? readThdPercent(bench.instrument, errors, truth.thdPercent, random)
            : null,
        repeat: slot.repeat,
      };
    }),
  );
}
