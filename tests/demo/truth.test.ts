import { describe, expect, it } from 'vitest';
import { channels } from '../../schemas/common.ts';
import { boostGainDb, railPeakVolts } from '../../src/demo/output-model.ts';
import {
  bassBoostDb,
  cleanVolts,
  highestCleanStep,
  highestStepCleanThroughout,
  thirdOctavesHz,
  trueCharacteristics,
  trueOutput,
  volumeSteps,
} from '../../src/demo/truth.ts';
import { findProfile, profiles } from '../../src/demo/world/index.ts';

const supplies = [12.6, 14.4];
const ids = profiles.map(({ id }) => id);

it('takes the exact third-octave frequencies', () => {
  // IEC 61260-1:2014, base-ten system.
  expect(thirdOctavesHz).toHaveLength(31);
  expect(thirdOctavesHz[0]).toBeCloseTo(19.9526, 4);
  expect(thirdOctavesHz[2]).toBeCloseTo(31.6228, 4);
  expect(thirdOctavesHz[17]).toBe(1000);
  expect(thirdOctavesHz[30]).toBeCloseTo(19952.6, 1);
});

describe.each(ids)('the truth of %s', (id) => {
  const { unit, ratedLoad } = (({ family }) => ({ unit: family.unit, ratedLoad: family.ratedLoadOhms }))(
    findProfile(id),
  );

  it('rises strictly with every step', () => {
    const volts = volumeSteps(id).map((step) => trueOutput(id, 'FL', step, 1000).voltsRms);
    expect(volts.every((value, i) => i === 0 || value > (volts[i - 1] ?? Number.POSITIVE_INFINITY))).toBe(
      true,
    );
  });

  it('stays within what the supply gives', () => {
    for (const supplyVolts of supplies) {
      const swing = unit.topology === 'bridged' ? supplyVolts : supplyVolts / 2;
      expect(railPeakVolts(unit, supplyVolts)).toBeLessThan(swing);
      // A sine swings at most to the supply (14.4 V bridged: 10.18 V rms; derived, common practice) …
      expect(cleanVolts(id, { supplyVolts })).toBeLessThanOrEqual(swing / Math.SQRT2);
      // … and a clipped wave, however hard it is driven, never passes the square wave.
      const over = channels.flatMap((channel) =>
        volumeSteps(id).flatMap((step) =>
          [19.9526, 63.0957, 1000, 15848.9]
            .map((hz) => trueOutput(id, channel, step, hz, { supplyVolts }).voltsRms)
            .filter((volts) => volts > swing),
        ),
      );
      expect(over).toEqual([]);
    }
  });

  it('is clean up to one step and at no step above', () => {
    const clean = highestCleanStep(id);
    for (const step of volumeSteps(id)) {
      const { thdPercent } = trueOutput(id, 'FL', step, 1000);
      if (thdPercent !== null) expect(thdPercent <= 1).toBe(step <= clean);
    }
    expect(highestStepCleanThroughout(id)).toBeLessThanOrEqual(clean);
  });

  it('gives less into a lower load, by the divider of output and load resistance', () => {
    const volts = (loadOhms: number) =>
      trueOutput(id, 'FL', highestCleanStep(id), 1000, { loadOhms }).voltsRms;
    const divider = (loadOhms: number) => loadOhms / (loadOhms + unit.outputOhms);
    expect(volts(ratedLoad / 2) / volts(ratedLoad)).toBeCloseTo(
      divider(ratedLoad / 2) / divider(ratedLoad),
      4,
    );
  });

  it('has a rear as far below the front as its tuning says, or silent', () => {
    const setting = findProfile(id).profile.tuning.rear;
    const { rearToFrontDb, muted, highestCleanStep: step } = trueCharacteristics(id);
    expect(muted).toEqual(setting === 'muted' ? ['RL', 'RR'] : []);
    if (setting === 'muted') expect(trueOutput(id, 'RL', step, 1000).voltsRms).toBe(unit.noiseVoltsRms);
    if (setting === 'muted') expect(rearToFrontDb).toBeNull();
    else expect(rearToFrontDb).toBeCloseTo(setting, 2);
  });
});

it('knows fixed, fading and switched boosts', () => {
  const boosted = profiles.filter(({ profile }) => profile.tuning.boost !== undefined);
  const kinds = new Set(boosted.map(({ profile }) => profile.tuning.boost?.overVolume.kind));
  expect(kinds).toEqual(new Set(['fixed', 'fades', 'off-above']));
  for (const { id, profile } of boosted) {
    const boost = profile.tuning.boost;
    if (!boost) continue;
    const [low, high] = [10, highestStepCleanThroughout(id)];
    expect(boostGainDb(boost, low)).toBe(boost.gainDb);
    if (boost.overVolume.kind === 'fixed') {
      expect(bassBoostDb(id, high)).toBeCloseTo(bassBoostDb(id, low), 1);
    } else {
      expect(boostGainDb(boost, high)).toBe(0);
      expect(bassBoostDb(id, low)).toBeGreaterThan(bassBoostDb(id, high) + 3);
    }
  }
});

it('gives a profile said to be the same the same output', () => {
  const copies = profiles.filter(({ profile }) => profile.sameAs !== undefined);
  expect(copies.length).toBeGreaterThan(0);
  for (const { id, profile } of copies) {
    expect(trueCharacteristics(id)).toEqual(trueCharacteristics(profile.sameAs ?? ''));
  }
});

it('spans low and hot profiles', () => {
  const volts = ids.map((id) => cleanVolts(id));
  expect(volts.filter((value) => value < 2).length).toBeGreaterThanOrEqual(3);
  expect(volts.filter((value) => value > 7).length).toBeGreaterThanOrEqual(3);
});
