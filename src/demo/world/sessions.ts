/** The eight bench sessions as planned. Outcomes follow from the model; see ../sheet.ts. */

import { profileId } from '../../base/profile-id.ts';
import { brasslight } from './brasslight.ts';
import { dialstone } from './dialstone.ts';
import { glasswick } from './glasswick.ts';
import { northpane } from './northpane.ts';
import type { DemoFamily, DemoSession } from './types.ts';

const all = (family: DemoFamily) => family.profiles.map(({ code }) => profileId(family.id, code));

const disc = 'Disc, 16-bit 44.1 kHz sine tones at full scale, tone controls and balance centred';
const stick = 'USB stick, 16-bit 44.1 kHz sine tones at full scale, tone controls and balance centred';

/** The procedure every session follows; how the voltmeter is connected depends on the outputs. */
const procedure = (leads: string) =>
  `Unit warmed up for half an hour with its profile active, every output loaded with a resistor of its own; voltmeter across the load, ${leads}. Front left at 1 kHz at every step, three times over at four of them; front left at the exact third-octave frequencies of IEC 61260-1 at a low, a middle and a high step, the high one being the highest at which the loudest tone of the row distorts by no more than one per cent; the other outputs at 1 kHz at these steps and in the bass at the middle one.`;

const common = procedure('both leads floating');

export const sessions: readonly DemoSession[] = [
  {
    id: '2024-02-north',
    date: '2024-02-13',
    bench: 'north-bench',
    from: disc,
    loadOhms: 4,
    supply: { volts: 14.4, toleranceVolts: 0.05 },
    method: common,
    profiles: all(brasslight),
  },
  {
    id: '2024-06-quay',
    date: '2024-06-04',
    bench: 'quay-bench',
    from: disc,
    loadOhms: 4,
    supply: { volts: 14.4, toleranceVolts: 0.1 },
    method: procedure('one lead on the output’s ground, which these outputs have'),
    profiles: all(dialstone),
  },
  {
    id: '2024-11-north',
    date: '2024-11-19',
    bench: 'north-bench',
    from: stick,
    loadOhms: 4,
    supply: { volts: 14.4, toleranceVolts: 0.05 },
    method: `${common} The one Dialstone profile was fed from the disc of the February session.`,
    profiles: [...all(glasswick), 'dialstone/1-1e'],
  },
  {
    id: '2025-03-van',
    date: '2025-03-11',
    bench: 'van-bench',
    from: 'Disc or USB stick, whichever the unit takes; sine tones at full scale, tone controls centred',
    loadOhms: 4,
    supply: { volts: 14.4, toleranceVolts: 0.2 },
    method: `${common} Taken in customers’ machines from a battery held up by a charger, engine off.`,
    profiles: [
      'brasslight/8b0s-i5z',
      'brasslight/8b0s-15z',
      'dialstone/1-10',
      'glasswick/0x7e8',
      'glasswick/0x5b0',
      'northpane/os518-b2-10',
    ],
  },
  {
    id: '2025-07-quay',
    date: '2025-07-22',
    bench: 'quay-bench',
    from: stick,
    loadOhms: 4,
    supply: { volts: 14.4, toleranceVolts: 0.1 },
    method: common,
    profiles: all(northpane),
  },
  {
    id: '2025-11-north',
    date: '2025-11-04',
    bench: 'north-bench',
    from: stick,
    loadOhms: 2,
    supply: { volts: 14.4, toleranceVolts: 0.05 },
    method: `${common} Loads of half the usual resistance, as Lanternby is rated; one Northpane profile was added to see what the lower load does to it.`,
    profiles: [
      'lanternby/1e5028',
      'lanternby/s5b80g',
      'lanternby/0o16z2',
      'lanternby/2z6i1b',
      'northpane/os581-8z-10',
    ],
  },
  {
    id: '2026-04-van',
    date: '2026-04-14',
    bench: 'van-bench',
    from: 'Disc or USB stick, whichever the unit takes; sine tones at full scale, tone controls centred',
    loadOhms: 4,
    supply: { volts: 12.6, toleranceVolts: 0.2 },
    method: `${common} Taken from a rested battery without a charger, to see what a stopped engine leaves.`,
    profiles: ['brasslight/8b0s-i5z', 'glasswick/0x1d0', 'glasswick/0x7b8', 'northpane/zb802-0s-01'],
  },
  {
    id: '2026-09-quay',
    date: '2026-09-08',
    bench: 'quay-bench',
    from: 'Disc or USB stick, whichever the unit takes; sine tones at full scale, tone controls centred',
    loadOhms: 4,
    supply: { volts: 14.4, toleranceVolts: 0.1 },
    method: `${common} A repeat of profiles first taken on the north bench, on other units of the same families.`,
    profiles: [
      'brasslight/2z6g-0o8',
      'brasslight/5s1i-b80',
      'brasslight/b5z2-8o0',
      'glasswick/0x7b8',
      'glasswick/0x5b0',
      'glasswick/0x1d0',
      'lanternby/1e5028',
    ],
  },
];
