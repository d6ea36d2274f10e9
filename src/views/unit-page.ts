/** The view model of a head-unit family's page: know it, read its code, what its codes put out. */
import type { CautionId } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import type { Entry } from '../base/index.ts';
import type { FaceData } from '../plot/face.ts';
import { phrase } from '../words/index.ts';
import { sentenceText } from './answer-sentence.ts';
import { type CautionText, cautionTexts } from './cautions.ts';
import { profilePath, unitPath, wayPath } from './paths.ts';
import { sentenceOf } from './profile-page.ts';
import { citedSources, proseHtml } from './prose.ts';
import { type SourceLink, sourceLinks } from './reading-links.ts';
import { type SequenceView, sequenceView } from './sequence-steps.ts';
import type { Fact } from './session-conditions.ts';
import { systemShortLabel } from './wording.ts';

export interface UnitProfileRow {
  readonly code: string;
  readonly path: string;
  readonly system: string;
  readonly sentence: string;
}

export interface UnitPageView {
  readonly id: string;
  readonly path: string;
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly facts: readonly Fact[];
  readonly features: readonly string[];
  readonly face: FaceData;
  readonly fitment: readonly { readonly model: string; readonly years: string }[];
  readonly codeWhere: string;
  /** Printed before the first step. */
  readonly cautions: readonly CautionText[];
  /** Printed where it comes to wiring and measuring. */
  readonly wiringCautions: readonly CautionText[];
  readonly sequences: readonly (SequenceView & { readonly wayPath: string })[];
  readonly profiles: readonly UnitProfileRow[];
  readonly html: string;
  readonly sources: readonly SourceLink[];
}

/** The view of a unit’s page; `base` is the base path of the site. */
export async function unitPage(
  answers: Answers,
  family: Entry<'families'>,
  base: string,
): Promise<UnitPageView> {
  const { data, id } = family;
  const sequences = answers.base.sequencesOfFamily.get(id) ?? [];
  const forReading = sequences.flatMap((sequence): CautionId[] => sequence.data.cautions);
  const cautions = forReading.length > 0 ? forReading : data.cautions;
  return {
    id,
    path: unitPath(id),
    name: data.name,
    title: data.name,
    description: data.summary,
    facts: unitFacts(family),
    features: data.identify.map(({ feature }) => feature),
    face: faceData(family),
    fitment: data.fitment.map(({ model, fromYear, toYear }) => ({
      model,
      years: fromYear === toYear ? `${fromYear}` : `${fromYear}–${toYear}`,
    })),
    codeWhere: data.code.where,
    cautions: cautionTexts(cautions),
    wiringCautions: cautionTexts(data.cautions.filter((id) => !cautions.includes(id))),
    sequences: sequences.map((sequence) => ({
      ...sequenceView(sequence.id, sequence.data, data),
      wayPath: wayPath(id, sequence.id),
    })),
    profiles: (answers.base.profilesOfFamily.get(id) ?? []).map((profile) => ({
      code: profile.data.code,
      path: profilePath(profile.id),
      system: systemShortLabel(profile.data.system),
      sentence: sentenceText(sentenceOf(answers, profile) ?? []),
    })),
    html: await proseHtml(answers, family, 3, base),
    sources: sourceLinks(answers, [
      ...data.sources,
      ...sequences.flatMap((sequence) => sequence.data.sources),
      ...citedSources(family),
    ]),
  };
}

function topologyWords(topology: Entry<'families'>['data']['output']['topology']): string {
  const words: Readonly<Record<Entry<'families'>['data']['output']['topology'], string>> = {
    bridged: phrase('Bridged: neither terminal is ground'),
    'ground-referenced': phrase('Against ground'),
  };
  return words[topology];
}

function unitFacts({ data }: Entry<'families'>): Fact[] {
  const { output, volume } = data;
  return [
    { label: phrase('Fitted by'), text: data.maker },
    ...(data.alsoCalled.length > 0
      ? [{ label: phrase('Also called'), text: data.alsoCalled.join(', ') }]
      : []),
    {
      label: phrase('Speaker outputs'),
      text: phrase('{count}, {load}\u00a0Ω each', {
        count: output.channels.length,
        load: output.ratedLoadOhms,
      }),
    },
    { label: phrase('Outputs are'), text: topologyWords(output.topology) },
    {
      label: phrase('Volume steps'),
      text: phrase('{from} to {to}', { from: volume.lowestStep, to: volume.highestStep }),
    },
  ];
}

/** The geometry for drawings, with the number of the telling feature each control carries. */
export function faceData({ data }: Entry<'families'>): FaceData {
  const { face, identify } = data;
  return {
    widthMm: face.widthMm,
    heightMm: face.heightMm,
    screen: face.screen,
    controls: face.controls.map((control) => {
      const numbers = identify.flatMap(({ control: pointed }, index) =>
        pointed === control.id ? [index + 1] : [],
      );
      return { ...control, numbers };
    }),
  };
}
