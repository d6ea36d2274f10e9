import type { Finding, Place } from '../../base/index.ts';
import type { Rule } from '../rule.ts';

export const formerAddress: Rule = {
  id: 'former-address',
  title: 'A former id belongs to one profile, and to none that is there.',
  explanation:
    'A renamed profile names the ids it had under `formerly`, and their addresses lead to it: links on invoices and in messages go on working. An address can lead to one page only, so an id may not be that of a profile that is there, nor be claimed by two.',
  severity: 'error',
  examples: [
    {
      title: 'the id of a profile that is there',
      file: 'profiles/moorlight/rt-5561.yaml',
      good: 'code: "RT-5561"',
      bad: 'code: "RT-5561"\nformerly: [moorlight/km-4417]',
      foundAt: 'moorlight/km-4417',
    },
    {
      title: 'an id that two profiles claim',
      file: 'profiles/moorlight/rt-5561.yaml',
      good: 'code: "RT-5561"',
      bad: 'code: "RT-5561"\nformerly: [moorlight/kn-1]',
      foundAt: 'moorlight/kn-1',
      also: [
        {
          file: 'profiles/moorlight/kn-2093.yaml',
          good: 'code: "KN-2093"',
          bad: 'code: "KN-2093"\nformerly: [moorlight/kn-1]',
        },
      ],
    },
  ],
  check: ({ answers: { base } }) => {
    const findings: Finding[] = [];
    const claimed = new Map<string, { id: string; place: () => Place }>();
    for (const profile of base.profiles.values()) {
      for (const [at, former] of profile.data.formerly.entries()) {
        const place = () => profile.place(['formerly', at]);
        const taken = base.profiles.get(former);
        const first = claimed.get(former);
        if (!taken && !first) {
          claimed.set(former, { id: profile.id, place });
          continue;
        }
        findings.push({
          rule: 'former-address',
          severity: 'error',
          place: place(),
          message: taken
            ? `“${former}” is the id of a profile that is there, so its address cannot lead here.`
            : `The profile “${first?.id}” was formerly “${former}” too.`,
          help: taken
            ? 'Take it out here, or rename the file of that profile.'
            : 'Keep it at the one that riders with the old address are to find.',
          related: first && !taken ? [{ place: first.place(), message: 'It is claimed here.' }] : [],
        });
      }
    }
    return findings;
  },
};
