import type { Base, Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';
import { mistakenSources } from '../session-sources.ts';

export const unsourced: Rule = {
  id: 'unsourced',
  title: 'Every measurement and every statement names the source it was taken from.',
  explanation:
    'A number without a source cannot be judged by a rider nor corrected by a colleague. A bench session names a source of the kind bench-session; a statement names a source of another kind, because what the bench found is computed from its readings and never stated by hand. A profile that cites a bench session has readings in its sheet, and a session cites the source of its own day.',
  severity: 'error',
  examples: [
    {
      title: 'a statement without a source',
      file: 'statements/letter-rear.yaml',
      good: 'source: rider-letter\n',
      bad: '',
    },
    {
      title: 'a decision table without a source',
      file: 'tables/rear-speakers.yaml',
      good: '\nsources: [maker-bulletin]\n',
      bad: '\n',
      foundIn: 'tables/rear-speakers.yaml',
      foundAt: 'name',
    },
    {
      title: 'a bench session cited for a profile it did not measure',
      file: 'profiles/fellside/310.yaml',
      good: 'sources: [maker-bulletin]',
      bad: 'sources: [maker-bulletin, shed-session]',
      foundAt: 'shed-session',
    },
    {
      title: 'a session that cites the source of another day',
      file: 'outputs/2026-02-loft/session.yaml',
      good: 'source: loft-session',
      bad: 'source: shed-session',
      foundAt: 'shed-session',
    },
  ],
  check: ({ answers: { base }, readerFindings }) => {
    const findings = readerFindings.filter((finding) => finding.rule === 'unsourced');
    const wrongKind = (place: Finding['place'], message: string, help: string): void => {
      findings.push({ rule: 'unsourced', severity: 'error', place, message, help, related: [] });
    };
    for (const session of base.outputs.values()) {
      const source = base.sources.get(session.data.source);
      if (!source || source.data.kind === 'bench-session') continue;
      wrongKind(
        session.place(['source']),
        `These readings cite “${session.data.source}”, which is a ${words(source.data.kind)}, not a bench session.`,
        'Name the source entry of this bench session, or add one with kind: bench-session.',
      );
    }
    for (const statement of base.statements.values()) {
      const source = base.sources.get(statement.data.source);
      if (source?.data.kind !== 'bench-session') continue;
      wrongKind(
        statement.place(['source']),
        `This statement cites the bench session “${statement.data.source}”.`,
        'Put its readings into outputs/; a statement is for what other sources say.',
      );
    }
    for (const { session, cited, meant } of mistakenSources(base)) {
      if (cited.data.kind !== 'bench-session') continue;
      wrongKind(
        session.place(['source']),
        `These readings of ${session.data.date} cite “${cited.id}”, which is of ${cited.data.date}; the source of that day, “${meant.id}”, is cited by no session.`,
        `Did you mean “${meant.id}”?`,
      );
    }
    // A sheet that could not be read in full may hold what seems to be missing.
    if (readerFindings.some(({ place }) => place.file.startsWith('outputs/'))) return findings;
    return [...findings, ...citedWithoutReadings(base)];
  },
};

/** Profiles that cite a bench session whose sheets have no reading of them. */
function citedWithoutReadings(base: Base): Finding[] {
  const measuredIn = new Map<string, Set<string>>();
  for (const session of base.outputs.values()) {
    const measured = measuredIn.get(session.data.source) ?? new Set();
    measuredIn.set(session.data.source, measured);
    for (const profile of base.readings.get(session.id)?.profiles ?? []) measured.add(profile);
  }
  return [...base.profiles.values()].flatMap((profile) =>
    profile.data.sources.flatMap((id, index): Finding[] => {
      const measured = measuredIn.get(id);
      if (!measured || measured.has(profile.id)) return [];
      if (base.sources.get(id)?.data.kind !== 'bench-session') return [];
      return [
        {
          rule: 'unsourced',
          severity: 'error',
          place: profile.place(['sources', index]),
          message: `This profile cites the bench session “${id}”, whose sheet has no reading of it.`,
          help: 'Cite the session that measured it, add its readings to that sheet, or take the source out.',
          related: [],
        },
      ];
    }),
  );
}

function words(kind: string): string {
  return kind.replaceAll('-', ' ');
}
