import type { Finding, Place } from '../../base/index.ts';
import { canonicalCode } from '../../codes/index.ts';
import type { Rule } from '../rule.ts';

export const duplicateCode: Rule = {
  id: 'duplicate-code',
  title: 'No two profiles of a family have the same code.',
  explanation:
    'A rider who reads a code must land on one profile. Codes are the same when they differ only in capitals, spaces and separators, because that is how they are looked up; other spellings count as codes too.',
  severity: 'error',
  examples: [
    {
      title: 'the code of another profile, written another way',
      file: 'profiles/moorlight/rt-5561.yaml',
      good: 'code: "RT-5561"',
      bad: 'code: "KM-4417"',
      foundAt: '"KM-4417"',
    },
  ],
  check: ({ answers: { base } }) => {
    const findings: Finding[] = [];
    for (const profiles of base.profilesOfFamily.values()) {
      // Places are looked up for findings only: most profiles need not be read again for one.
      const firstUse = new Map<string, { id: string; spelling: string; place: () => Place }>();
      for (const profile of profiles) {
        const spellings = [
          { spelling: profile.data.code, path: ['code'] },
          ...profile.data.otherSpellings.map((spelling, index) => ({
            spelling,
            path: ['otherSpellings', index],
          })),
        ];
        for (const { spelling, path } of spellings) {
          const key = canonicalCode(spelling);
          const first = firstUse.get(key);
          const place = () => profile.place(path);
          if (!first) firstUse.set(key, { id: profile.id, spelling, place });
          else if (first.id !== profile.id) {
            findings.push({
              rule: 'duplicate-code',
              severity: 'error',
              place: place(),
              message: `The code “${spelling}” is already that of the profile “${first.id}” (“${first.spelling}”).`,
              help: 'Correct the code here or there; if they are one profile, keep one file.',
              related: [{ place: first.place(), message: 'The same code stands here.' }],
            });
          }
        }
      }
    }
    return findings;
  },
};
