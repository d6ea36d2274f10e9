import type { Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';

export const unsourced: Rule = {
  id: 'unsourced',
  title: 'Every measurement and every statement names the source it was taken from.',
  explanation:
    'A number without a source cannot be judged by a rider nor corrected by a colleague. A bench session names a source of the kind bench-session; a statement names a source of another kind, because what the bench found is computed from its readings and never stated by hand.',
  severity: 'error',
  examples: [
    {
      title: 'a statement without a source',
      file: 'statements/letter-rear.yaml',
      good: 'source: rider-letter\n',
      bad: '',
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
    return findings;
  },
};

function words(kind: string): string {
  return kind.replaceAll('-', ' ');
}
