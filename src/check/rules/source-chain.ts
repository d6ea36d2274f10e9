import type { Base, Entry, Finding } from '../../base/index.ts';
import { allEntries, linksOf } from '../../base/index.ts';
import { circleGroups } from '../circles.ts';
import type { Rule } from '../rule.ts';
import { mistakenSources, sourcesWithoutSession } from '../session-sources.ts';
import { restingOn, rootsOf } from '../source-roots.ts';

export const sourceChain: Rule = {
  id: 'source-chain',
  title: 'Every chain of sources ends at one that can be looked up.',
  explanation:
    'A source may have been taken from others (restsOn), and those from others again. The chain must end somewhere. It ends nowhere where restsOn is there but empty; where it ends at a bench session that is cited although no sheet in outputs/ holds its readings; and where a source is trusted highly although all its chains end at riders’ reports, because what people told can be believed but not looked up. A source that names no others counts as first-hand and is the end of its own chain.',
  severity: 'warning',
  examples: [
    {
      title: 'a source taken from others that it does not name',
      file: 'sources/rider-letter.yaml',
      good: 'restsOn: [maker-bulletin]',
      bad: 'restsOn: []',
      foundAt: '[]',
    },
    {
      title: 'hearsay that is trusted highly',
      file: 'sources/rider-letter.yaml',
      good: 'trust: low\ntrustReason: One rider, one ear.\nrestsOn: [maker-bulletin]\n',
      bad: 'trust: high\ntrustReason: One rider, one ear.\n',
      foundAt: 'high',
    },
    {
      title: 'a bench session without its readings',
      file: 'sources/attic-session.yaml',
      good: '',
      bad: 'kind: bench-session\ntitle: Bench session of 2024-03-01, attic\ndate: 2024-03-01\nkeptAt: The bench book\ntrust: medium\ntrustReason: Taken on our own bench.\n',
      foundAt: 'bench-session',
      also: [
        {
          file: 'profiles/fellside/310.yaml',
          good: 'sources: [maker-bulletin]',
          bad: 'sources: [attic-session]',
        },
      ],
    },
  ],
  check: ({ answers: { base }, readerFindings }) => {
    const groups = circleGroups(restingOn(base));
    const findings = [...base.sources.values()].flatMap((source) => endOf(base, source, groups));
    // A session that could not be read may be the one that seems to be missing.
    const isComplete = !readerFindings.some(({ place }) => place.file.startsWith('outputs/'));
    return isComplete ? [...findings, ...withoutReadings(base)] : findings;
  },
};

function endOf(base: Base, source: Entry<'sources'>, groups: ReadonlyMap<string, number>): Finding[] {
  const { restsOn, trust } = source.data;
  const finding = (path: readonly string[], message: string, help: string): Finding[] => [
    { rule: 'source-chain', severity: 'warning', place: source.place(path), message, help, related: [] },
  ];
  if (restsOn?.length === 0) {
    return finding(
      ['restsOn'],
      'This source is said to be taken from others, but none is named.',
      'Name them, or take restsOn out if the source is first-hand.',
    );
  }
  if (trust !== 'high' || groups.has(source.id)) return [];
  const roots = [...rootsOf(base, source.id)];
  if (!roots.every((id) => base.sources.get(id)?.data.kind === 'riders-report')) return [];
  return finding(
    ['trust'],
    restsOn === undefined
      ? 'This report of a rider is trusted highly, and nothing first-hand stands behind it.'
      : `This source is trusted highly, but all it comes from are riders’ reports: “${roots.join('”, “')}”.`,
    'Trust it less, or name what bears it out in restsOn: a bench session, a bulletin, a data sheet.',
  );
}

/** Bench sessions that are cited and have no sheet. */
function withoutReadings(base: Base): Finding[] {
  // A session that names the wrong source leaves the right one without: its own finding says so.
  const meant = new Set(mistakenSources(base).map((mistake) => mistake.meant.id));
  const isEverySessionSourced = [...base.outputs.values()].every(
    ({ data }) => base.sources.get(data.source)?.data.kind === 'bench-session',
  );
  if (!isEverySessionSourced) return [];
  const missing = sourcesWithoutSession(base).filter(({ id }) => !meant.has(id));
  if (missing.length === 0) return [];
  const citedBy = new Map<string, Entry>();
  for (const entry of allEntries(base)) {
    for (const { kind, id } of linksOf(entry)) {
      if (kind === 'sources' && entry.kind !== 'sources' && !citedBy.has(id)) citedBy.set(id, entry);
    }
  }
  return missing.flatMap((source): Finding[] => {
    const user = citedBy.get(source.id);
    if (!user || user.kind === 'statements') return [];
    return [
      {
        rule: 'source-chain',
        severity: 'warning',
        place: source.place(['kind']),
        message: `“${source.id}” is a bench session and is cited, but no sheet in outputs/ holds its readings.`,
        help: 'Add the session with its readings to outputs/, or correct the kind of this source.',
        related: [{ place: user.place(), message: 'Cited here.' }],
      },
    ];
  });
}
