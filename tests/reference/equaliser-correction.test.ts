/**
 * A profile made of three BiquadFilterNodes of an independent program (npm web-audio-api) and the settings found for
 * it, given to nodes of the same program: together they are flat. Results of getFrequencyResponse are float32.
 */
import { expect, test } from 'vitest';
import { OfflineAudioContext } from 'web-audio-api';
import { correction } from '../../src/decide/plan/index.ts';
import { characterise } from '../../src/measure/index.ts';
import { linesOf } from '../decide/plan/told.ts';
import { responseRun, thirdOctaves, unit } from '../measure/ideal-unit.ts';

interface Peak {
  readonly hz: number;
  readonly gainDb: number;
  readonly q: number;
}

const context = new OfflineAudioContext(1, 128, 48_000);

function nodesDb(peaks: readonly Peak[], hz: number): number {
  return peaks.reduce((sum, peak) => {
    const node = context.createBiquadFilter();
    node.type = 'peaking';
    node.frequency.value = peak.hz;
    node.Q.value = peak.q;
    node.gain.value = peak.gainDb;
    const magnitude = new Float32Array(1);
    node.getFrequencyResponse(new Float32Array([hz]), magnitude, new Float32Array(1));
    return sum + 20 * Math.log10(magnitude[0] ?? 0);
  }, 0);
}

test.each([
  ['a bass boost, a dip and a presence peak', 63, 8, 1.1, 500, -3, 2, 4000, 4, 1.5],
  ['two boosts close together and a narrow peak', 60, 5, 1.4, 110, 4, 1.4, 2500, 6, 4],
  ['a wide dip under a boost', 80, 9, 0.8, 250, -6, 0.7, 8000, -4, 1],
] as const)('%s is flattened to 0.1 dB', (_, hz1, gain1, q1, hz2, gain2, q2, hz3, gain3, q3) => {
  const made: Peak[] = [
    { hz: hz1, gainDb: gain1, q: q1 },
    { hz: hz2, gainDb: gain2, q: q2 },
    { hz: hz3, gainDb: gain3, q: q3 },
  ];
  const output = characterise('p', [responseRun((hz) => nodesDb(made, hz))], unit);
  const { filters } = linesOf(
    correction(
      { ...output, boostBehaviour: 'fixed' },
      { mostFilters: 3, kinds: ['peaking'], hz: [20, 20_000], gainDb: [-12, 12], q: [0.4, 8] },
    ),
  );
  expect(filters.length).toBe(3);
  const levels = thirdOctaves().map((hz) => nodesDb([...made, ...filters], hz));
  const mean = levels.reduce((sum, one) => sum + one, 0) / levels.length;
  expect(levels.length).toBeGreaterThan(25);
  for (const level of levels) expect(Math.abs(level - mean)).toBeLessThan(0.1);
});
