import type { Base } from '../../base/index.ts';
import { areAlike, formatHz } from '../../measure/index.ts';
import { sharedName } from '../declared-twins.ts';
import type { ProfileSheet } from '../readings/cells.ts';
import { type ExchangedOutputs, exchangedOutputs } from '../readings/exchanged-outputs.ts';
import { type MistakenProfile, mistakenProfiles, type Suspect } from '../readings/mistaken-profiles.ts';
import { compared, inOrder, leastCommon } from '../readings/sheet-pairs.ts';
import { sheetsOfProfile } from '../readings/sheets.ts';
import { outputRule, type RuleFinding } from '../rule.ts';

export const mistakenSeries = outputRule<RuleFinding[]>({
  id: 'mistaken-series',
  title: 'Every reading stands under the profile and the output it was taken of.',
  explanation:
    'With the wrong profile set on the unit, or two leads exchanged at the load, a sheet is right in every number and wrong in every row. Where the readings of a profile contradict those of another session under like conditions, they are tried on the other profiles of the family, and one output on another: if nearly all of them fit there and few where they stand, the finding says where they belong. Sessions that agree are never tried.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'front right and rear left exchanged',
      file: 'outputs/2026-02-loft/readings.csv',
      good: 'moorlight/km-4417,FR,14,1000,1.1208,0.080,1\nmoorlight/km-4417,RL,14,1000,1.1181',
      bad: 'moorlight/km-4417,FR,14,1000,0.5604,0.080,1\nmoorlight/km-4417,RL,14,1000,1.1208',
      foundAt: 'FR',
      also: [
        {
          file: 'outputs/2025-05-shed/readings.csv',
          good: 'moorlight/km-4417,RL,14,1000,1.1192',
          bad: 'moorlight/km-4417,RL,14,1000,0.5611',
        },
      ],
    },
  ],
  // Profiles said to be the same are not told apart.
  follows: ({ base }, family) =>
    (base.profilesOfFamily.get(family) ?? []).map(({ id }) => sharedName(base, id)),
  ofFamily: ({ base }, family) => familyFindings(base, family),
  conclude: (found) => found.flat(),
});

function familyFindings(base: Base, family: string): RuleFinding[] {
  const exchanged = new Map<string, ExchangedOutputs>();
  const suspects: Suspect[] = [];
  const profiles = (base.profilesOfFamily.get(family) ?? []).map(({ id }) => id);
  for (const profile of profiles) {
    // Most profiles are read once: nothing to hold them against.
    if ((base.sessionsOfProfile.get(profile) ?? []).length < 2) continue;
    const sheets = sheetsOfProfile(base, profile);
    for (const [index, a] of sheets.entries()) {
      for (const b of sheets.slice(index + 1)) {
        if (!areAlike(a.session.data, b.session.data)) continue;
        const { apart, common } = compared(a, b);
        if (apart.length === 0) continue;
        const outputs = exchangedOutputs(a, b, apart);
        if (outputs) {
          // What several sessions contradict is told once.
          const key = `${outputs.sheet.session.id} ${profile}`;
          if (!exchanged.has(key)) exchanged.set(key, outputs);
        } else if (common >= leastCommon && apart.length > common / 2) suspects.push({ a, b });
      }
    }
  }
  const found = [...exchanged.values()].map((one) => outputsFinding(base, one));
  if (suspects.length === 0) return found;
  const sheets = new Map(profiles.map((profile) => [profile, sheetsOfProfile(base, profile)]));
  return [...found, ...mistakenProfiles(base, suspects, sheets).map((one) => profileFinding(base, one))];
}

function outputsFinding(base: Base, { outputs, sheet, witness, cells }: ExchangedOutputs): RuleFinding {
  const [one, other] = outputs;
  const [first] = inOrder(cells);
  if (!first) throw new Error(`no readings of session ${sheet.session.id}`);
  const rows = cells.flatMap(({ readings }) => readings);
  return {
    rule: 'mistaken-series',
    severity: 'error',
    place: placeOf(base, sheet, first.readings[0]?.id ?? '', 'channel'),
    message: `“${sheet.profile}”, step ${first.step}, ${formatHz(first.hz)}: ${one} reads here what ${witness.session.id} reads at ${other}, and ${other} what it reads at ${one}: two outputs exchanged? ${rows.length} rows.`,
    help: `Look at the notes of the session: if the leads were exchanged, exchange ${one} and ${other} in these rows; if not, the other session has them exchanged.`,
    related: [{ place: witness.session.place(['date'], 'key'), message: 'The other session.' }],
    claims: rows.map(({ id }) => id),
  };
}

function profileFinding(base: Base, { sheet, contradicted, witness, partner }: MistakenProfile): RuleFinding {
  const sheets = partner ? [sheet, partner] : [sheet];
  const cells = inOrder(sheets.flatMap((one) => one.cells));
  const first = cells[0]?.readings[0];
  if (!first) throw new Error(`no readings of session ${sheet.session.id}`);
  const names = [sheet.profile, witness.profile];
  const [here, there] = first.profile === sheet.profile ? names : names.reverse();
  const rows = cells.flatMap(({ readings }) => readings);
  const message = partner
    ? `The readings of “${here}” and “${there}” stand under each other’s name here, as ${contradicted.session.id} has them: two profiles exchanged? ${rows.length} rows.`
    : `The readings of “${sheet.profile}” do not fit those of ${contradicted.session.id}, but they fit “${witness.profile}” in ${witness.session.id}: was that profile set on the unit? ${rows.length} rows.`;
  return {
    rule: 'mistaken-series',
    severity: 'error',
    place: placeOf(base, sheet, first.id, 'profile'),
    message,
    help: 'Look at the notes of the session: if the unit was set to the other profile, correct the profile of these rows; if not, look at the other session in the same way.',
    related: [
      { place: contradicted.session.place(['date'], 'key'), message: 'The session they contradict.' },
      ...(witness.session === contradicted.session
        ? []
        : [{ place: witness.session.place(['date'], 'key'), message: 'The session they fit.' }]),
    ],
    claims: rows.map(({ id }) => id),
  };
}

function placeOf(base: Base, { session }: ProfileSheet, reading: string, column: 'channel' | 'profile') {
  const table = base.readings.get(session.id);
  if (!table) throw new Error(`no readings of session ${session.id}`);
  return table.place(reading, column);
}
