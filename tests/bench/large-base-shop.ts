/** What a shop has besides units and readings: equipment, plans and tables of the demo, guides and statements of its own. */
import { readdirSync, readFileSync } from 'node:fs';

const demo = new URL('../../content/', import.meta.url);
/** Tables that name profiles of the demo are left out. */
const leftOut = ['reflash-towards-what.yaml'];
const sources = [
  'equipment-classes',
  'kestrane-bulletin-14-07',
  'kestrane-bulletin-22-03',
  'telephone-notes-2026',
];
const guides = [
  'before-you-wire',
  'how-we-measure',
  'one-profile-many-names',
  'read-the-active-code',
  'replacement-units',
  'staged-upgrades',
  'what-the-numbers-mean',
];
/** One profile in so many is spoken of by a source other than the bench. */
const profilesToStatement = 25;

/** The files, by path; `idOf` gives the id of a profile, `topVoltsOf` its clean volts. */
export function* shopEntries(
  profiles: number,
  idOf: (index: number) => string,
  topVoltsOf: (index: number) => number,
): Generator<[file: string, text: string]> {
  for (const folder of ['equipment', 'plans', 'tables']) {
    for (const name of readdirSync(new URL(`${folder}/`, demo)).filter((one) => !leftOut.includes(one))) {
      yield [`${folder}/${name}`, readFileSync(new URL(`${folder}/${name}`, demo), 'utf8')];
    }
  }
  for (const name of sources) {
    yield [`sources/${name}.yaml`, readFileSync(new URL(`sources/${name}.yaml`, demo), 'utf8')];
  }
  for (const [at, name] of guides.entries())
    yield [`guides/${name}.md`, guide(name, at, idOf(at % profiles))];
  for (let index = 0; index < profiles; index += profilesToStatement) {
    yield [
      `statements/bulletin-${index}.yaml`,
      `source: bulletin
quote: Profile ${index} gives ${topVoltsOf(index).toFixed(1)} V.
claims:
  - { profile: ${idOf(index)}, trait: clean-volts, valueVolts: ${topVoltsOf(index).toFixed(1)}, toleranceVolts: 0.3 }
`,
    ];
  }
}

function guide(name: string, at: number, profile: string): string {
  return `---
title: ${name.replaceAll('-', ' ')}
summary: What a rider should know before anything is bought, in a few words.
order: ${at + 1}
sources: [equipment-classes]
---

The unit with :code[${profile}] puts out :value[${profile} clean-volts] before it clips.

## What follows

Compare it with what the amplifier takes, and read [the unit's page](/units/family-00/) first.
`;
}
