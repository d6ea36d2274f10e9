import type { Nodes } from 'mdast';
import type { Entry, Finding } from '../../base/index.ts';
import { familyNeeds, sequenceNeeds, textNeeds, unmet } from '../caution-table.ts';
import type { Rule } from '../rule.ts';

export const missingCaution: Rule = {
  id: 'missing-caution',
  title: 'Every entry carries the cautions that what it tells people to do calls for.',
  explanation:
    'Every sequence carries parked and look-only; one that turns the ignition on carries engine-off-indoors, and battery-drain too where its holds and waits may take longer than a minute. A family with bridged outputs carries bridged-outputs. A guide whose text speaks of the service screen, bridged outputs, fuses or test tones carries look-only, bridged-outputs, fuse or hearing. The table is common practice, no source; an entry may always carry more.',
  severity: 'error',
  examples: [
    {
      title: 'steps without the caution to look only',
      file: 'sequences/moorlight-menu.yaml',
      good: 'cautions: [parked, engine-off-indoors, look-only]',
      bad: 'cautions: [parked, engine-off-indoors]',
      foundAt: '[parked',
    },
    {
      title: 'bridged outputs without their caution',
      file: 'families/moorlight.md',
      good: 'cautions: [parked, look-only, bridged-outputs]',
      bad: 'cautions: [parked, look-only]',
      foundAt: '[parked',
    },
    {
      title: 'a guide that speaks of fuses without their caution',
      file: 'guides/reading-a-code.md',
      good: 'Read the code under the word ACTIVE, not a line of the list.',
      bad: 'Read the code under the word ACTIVE, not a line of the list. Never take a fuse out for it.',
      foundAt: '[parked',
      foundIn: 'guides/reading-a-code.md',
    },
  ],
  check: ({ answers: { base } }) => [
    ...[...base.sequences.values()].flatMap((entry) =>
      lacking(entry, unmet(sequenceNeeds, entry.data, entry.data.cautions)),
    ),
    ...[...base.families.values()].flatMap((entry) =>
      lacking(entry, unmet(familyNeeds, entry.data, entry.data.cautions)),
    ),
    ...[...base.guides.values()].flatMap((entry) =>
      lacking(entry, unmet(textNeeds, textOf(entry.body), entry.data.cautions)),
    ),
  ],
};

/** One finding for all an entry lacks, each caution with its reason. */
function lacking(
  entry: Entry<'sequences'> | Entry<'families'> | Entry<'guides'>,
  needs: readonly { readonly caution: string; readonly because: string }[],
): Finding[] {
  const wanted = [...new Map(needs.map((need) => [need.caution, need])).values()];
  if (wanted.length === 0) return [];
  const reasons = wanted.map(({ caution, because }) => `“${caution}”, because ${because}`);
  return [
    {
      rule: 'missing-caution',
      severity: 'error',
      place: entry.place(['cautions']),
      message: `These cautions lack ${reasons.join('; ')}.`,
      help: `Add ${wanted.map(({ caution }) => caution).join(', ')} to the cautions.`,
      related: [],
    },
  ];
}

/** The plain text of a Markdown body, its lines joined. */
function textOf(node: Nodes | undefined): string {
  if (!node) return '';
  const text = 'value' in node ? node.value : 'children' in node ? node.children.map(textOf).join(' ') : '';
  return text.replaceAll(/\s+/g, ' ');
}
