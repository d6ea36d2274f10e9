/** The limit of a profile's output, and the straight line put through it for tones of unknown level. */
import { describe, expect, test } from 'vitest';
import { interpolate, interpolateSwitched } from '../../src/decide/identify/interpolate.ts';
import { limitCurve, linearise, outputLevel } from '../../src/decide/identify/limit.ts';
import { randomStream } from '../../src/demo/random.ts';
import { trueOutput } from '../../src/demo/truth.ts';
import { dbRatio, dbv, type LevelAtStep, quantity } from '../../src/measure/index.ts';

/** Two decibels a step from −20 dBV, held at 0 dBV: steps 0 to 10 are clean, those above are not. */
const steps = Array.from({ length: 16 }, (_, step): LevelAtStep => {
  const level = Math.min(0, 2 * step - 20);
  return {
    step,
    volts: quantity(dbRatio(level), 'V', []),
    thdPercent: null,
    clean: step <= 10,
    readings: [],
  };
});
const curve = limitCurve(steps);

describe('the limit', () => {
  test('drive goes on as the clean steps do, output stays', () => {
    expect(curve.driveDbv[15]).toBeCloseTo(10, 9);
    expect(curve.cleanDbv).toBeCloseTo(0, 9);
    expect(outputLevel(curve, -6).levelDbv).toBe(-6);
    expect(outputLevel(curve, 7).levelDbv).toBeCloseTo(0, 9);
  });

  test('never seen to clip: halfway between going on and stopping, and as unsure', () => {
    const unlimited = limitCurve(steps.slice(0, 11));
    const { levelDbv, unknownDb } = outputLevel(unlimited, 4);
    expect(levelDbv).toBeCloseTo(2, 9);
    expect(unknownDb).toBeCloseTo(2 / Math.sqrt(3), 9);
  });

  test('a demo profile’s own steps come back, clipped ones too', () => {
    const id = 'brasslight/8b0s-i5z';
    const measured = Array.from({ length: 30 }, (_, index): LevelAtStep => {
      const { voltsRms, thdPercent } = trueOutput(id, 'FL', index + 1, 1000);
      return {
        step: index + 1,
        volts: quantity(voltsRms, 'V', []),
        thdPercent,
        clean: (thdPercent ?? 100) <= 1,
        readings: [],
      };
    });
    const own = limitCurve(measured);
    expect(own.clipped.length).toBeGreaterThan(3);
    own.driveDbv.forEach((drive, index) => {
      expect(outputLevel(own, drive).levelDbv).toBeCloseTo(dbv(measured[index]?.volts.value ?? 0), 6);
    });
  });
});

describe('the line over the tone’s level', () => {
  test('is the level itself while the output stays clean', () => {
    expect(linearise(curve, -13, 3)).toEqual({ levelDbv: -13, perOffset: 1, residualDb: 0 });
  });

  test('follows nothing where it is deep in the limit', () => {
    const { levelDbv, perOffset, residualDb } = linearise(curve, 15, 3);
    expect(levelDbv).toBeCloseTo(0, 2);
    expect(perOffset).toBeCloseTo(0, 2);
    expect(residualDb).toBeLessThan(0.05);
  });

  test.each([-6, -2, 0, 1, 3])('is the regression line of simulated tones at a drive of %d dB', (drive) => {
    const random = randomStream(3, `drive ${drive}`);
    const draws = 200_000;
    let [sumX, sumY, sumXx, sumXy, sumYy] = [0, 0, 0, 0, 0];
    for (let i = 0; i < draws; i += 1) {
      const x = 3 * random.gaussian();
      const y = Math.min(0, drive + x);
      sumX += x;
      sumY += y;
      sumXx += x * x;
      sumXy += x * y;
      sumYy += y * y;
    }
    const [meanX, meanY] = [sumX / draws, sumY / draws];
    const slope = (sumXy / draws - meanX * meanY) / (sumXx / draws - meanX ** 2);
    const variance = sumYy / draws - meanY ** 2 - slope ** 2 * (sumXx / draws - meanX ** 2);
    const line = linearise(curve, drive, 3);
    expect(Math.abs(line.levelDbv - meanY)).toBeLessThan(0.05);
    expect(Math.abs(line.perOffset - slope)).toBeLessThan(0.02);
    expect(Math.abs(line.residualDb - Math.sqrt(variance))).toBeLessThan(0.05);
  });
});

describe('interpolation', () => {
  const parabola = [0, 1, 2, 3, 4].map((x) => ({ x, y: 0.3 * x ** 2, u: 0.1 }));

  test('its allowance covers the bend of a parabola, as a rectangular distribution', () => {
    const at = interpolate(parabola, 1.5);
    const error = Math.abs((at?.y ?? 0) - 0.3 * 1.5 ** 2);
    expect(error).toBeCloseTo(0.075, 9);
    expect((at?.allowance ?? 0) * Math.sqrt(3)).toBeCloseTo(1.5 * error, 9);
  });

  test('a knot is itself, and outside there is nothing', () => {
    expect(interpolate(parabola, 2)).toEqual({ y: 1.2, u: 0.1, allowance: 0 });
    expect(interpolate(parabola, 4.1)).toBeUndefined();
    expect(interpolate(parabola, -0.1)).toBeUndefined();
  });

  test('what may switch between knots: mean and variance of a switch equally likely anywhere', () => {
    const at = interpolateSwitched(
      [
        { x: 10, y: 8, u: 0 },
        { x: 20, y: 0, u: 0 },
      ],
      13,
    );
    // At 13 it has switched with probability 0.3.
    expect(at?.y).toBeCloseTo(0.7 * 8, 9);
    expect(at?.allowance).toBeCloseTo(Math.sqrt(0.7 * 8 ** 2 - (0.7 * 8) ** 2), 9);
  });

  test('beyond the knots: the nearest value, as unsure as the slope would carry it', () => {
    const at = interpolateSwitched(
      [
        { x: 10, y: 8, u: 0 },
        { x: 20, y: 3, u: 0 },
      ],
      22,
    );
    expect(at).toEqual({ y: 3, u: 0, allowance: 1, beyond: true });
  });
});
