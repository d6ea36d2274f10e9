import type { Entry, Finding } from '../../base/index.ts';
import type { Rule } from '../rule.ts';

export const offTheFace: Rule = {
  id: 'off-the-face',
  title: 'Screen and controls of a unit lie on its face.',
  explanation:
    'The drawing of a unit is made from its measures, in millimetres from the left and top edge of the face. A control or a screen that reaches beyond the face is drawn outside of it, and a rider looks for it in vain: most often a wrong digit, or two measures exchanged.',
  severity: 'error',
  examples: [
    {
      title: 'a wrong digit',
      file: 'families/moorlight.md',
      good: 'kind: key, xMm: 150',
      bad: 'kind: key, xMm: 550',
      foundAt: '550',
    },
  ],
  check: ({ answers: { base } }) => [...base.families.values()].flatMap(familyFindings),
};

function familyFindings(family: Entry<'families'>): Finding[] {
  const { face } = family.data;
  const { screen, controls } = face;
  const off = (path: readonly (string | number)[], what: string, isAcross: boolean): Finding => ({
    rule: 'off-the-face',
    severity: 'error',
    place: family.place([...path, isAcross ? 'xMm' : 'yMm']),
    message: `${what} reaches beyond the face, which is ${isAcross ? `${face.widthMm}\u00a0mm wide` : `${face.heightMm}\u00a0mm high`}.`,
    help: 'Correct its place or its size, or the size of the face.',
    related: [{ place: family.place(['face', isAcross ? 'widthMm' : 'heightMm']), message: 'The face.' }],
  });
  const findings: Finding[] = [];
  if (screen.xMm + screen.widthMm > face.widthMm) findings.push(off(['face', 'screen'], 'The screen', true));
  else if (screen.yMm + screen.heightMm > face.heightMm)
    findings.push(off(['face', 'screen'], 'The screen', false));
  for (const [index, { label, xMm, yMm, widthMm, heightMm }] of controls.entries()) {
    const path = ['face', 'controls', index];
    // A control is placed by its centre.
    if (isBeyond(xMm, widthMm, face.widthMm)) findings.push(off(path, `“${label}”`, true));
    else if (isBeyond(yMm, heightMm, face.heightMm)) findings.push(off(path, `“${label}”`, false));
  }
  return findings;
}

function isBeyond(centre: number, size: number, whole: number): boolean {
  return centre - size / 2 < 0 || centre + size / 2 > whole;
}
