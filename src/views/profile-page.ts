/** The view model of a profile's page: the answer first, then everything it rests on. */
import type { Channel, Profile } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import { type Entry, setAsideFor } from '../base/index.ts';
import { formatNumber, formatQuantity } from '../measure/format.ts';
import { dbu, dbv } from '../measure/level.ts';
import type { Characteristic, CharacteristicName, ProfileOutput } from '../measure/quantity.ts';
import type { LevelPlotData } from '../plot/level-plot.ts';
import type { ResponsePlotData } from '../plot/response-plot.ts';
import { answerSentence, type SentencePart, sentenceText } from './answer-sentence.ts';
import { agreementSentence, behaviourOf, normalisedSentences } from './behaviour.ts';
import { characteristicLabel } from './characteristic-label.ts';
import { profilePath, readingsPath, sourcePath, unitPath } from './paths.ts';
import { type PlanAnswerView, planAnswerViews } from './plan-answers.ts';
import {
  type ReadingBook,
  type ReadingRows,
  readingBook,
  readingRows,
  type SourceLink,
  sourceLinks,
} from './reading-links.ts';
import { outputTraits } from './search-filters.ts';
import { type StatementView, statementViews } from './statement-comparison.ts';
import { type TableAnswerView, tableAnswerViews } from './table-answers.ts';
import { uncertaintyParts } from './uncertainty-parts.ts';
import { valueAnchorOf } from './value-anchors.ts';
import { benchSetting, longDate, originLabel, readAt, systemLabel } from './wording.ts';

export interface ValueRow {
  /** The id of its row. */
  readonly anchor: string;
  readonly label: string;
  readonly value: string;
  /** Channel, step and frequency it was read at. */
  readonly at: string;
  /** Load, supply and signal; empty where they are those of the whole table. */
  readonly setting: string;
  /** What the uncertainty is made of, largest first, each part's share of the variance; empty for steps and bounds. */
  readonly uncertainty: string;
  readonly readings: ReadingRows;
}

export interface HeadlineValue extends Pick<Characteristic, 'value' | 'unit' | 'bound'> {
  readonly label: string;
  /** As the page shows it, and what it was read at. */
  readonly text: string;
  readonly at: string;
}

export interface LevelRow {
  readonly step: number;
  readonly volts: string;
  /** The same level in dBV and dBu; empty for silence. */
  readonly decibels: string;
  readonly thd: string;
  readonly clean: boolean;
  readonly readings: ReadingRows;
}

export interface ProfileLink {
  readonly code: string;
  readonly path: string;
}

export interface ProfilePageView {
  readonly id: string;
  readonly code: string;
  readonly path: string;
  readonly title: string;
  readonly description: string;
  readonly family: { readonly id: string; readonly name: string; readonly path: string };
  readonly system: string;
  readonly systemKind: Profile['system'];
  readonly origin: string;
  readonly measured: readonly { readonly date: string; readonly path: string }[];
  /** The same days, ISO 8601, oldest first. */
  readonly measuredOn: readonly string[];
  readonly otherSpellings: readonly string[];
  readonly soldAs: readonly string[];
  readonly about: string;
  readonly sentence: readonly SentencePart[];
  readonly plans: readonly PlanAnswerView[];
  readonly tables: readonly TableAnswerView[];
  /** Where its readings stand; every link to a reading is made with it. */
  readonly book: ReadingBook;
  readonly setting: string;
  /** What riders ask for first. */
  readonly values: readonly ValueRow[];
  /** What riders ask for first, as numbers, for programs. */
  readonly headline: readonly HeadlineValue[];
  /** The other values under the main conditions. */
  readonly moreValues: readonly ValueRow[];
  readonly otherValues: readonly ValueRow[];
  readonly levels: readonly LevelRow[];
  readonly levelPlot: LevelPlotData | undefined;
  readonly responsePlot: ResponsePlotData | undefined;
  readonly readingsPath: string | undefined;
  /** What the search can narrow profiles by. */
  readonly traits: readonly string[];
  readonly silentChannels: readonly string[];
  readonly missing: readonly { readonly label: string; readonly reason: string }[];
  readonly statements: readonly StatementView[];
  readonly sameAs: ProfileLink | undefined;
  /** Profiles of the family whose readings come to the same output. */
  readonly twins: readonly ProfileLink[];
  /** How the scale and the boost go, in sentences. */
  readonly behaviour: readonly string[];
  /** What was brought to the main signal level, in sentences. */
  readonly normalised: readonly string[];
  /** How the sessions agree, in a sentence; undefined for fewer than two. */
  readonly agreement: string | undefined;
  /** Sessions whose readings are not used, and why. */
  readonly setAside: readonly {
    readonly session: string;
    readonly path: string;
    readonly reason: string;
    readonly by: string;
    readonly date: string;
  }[];
  readonly tellApart: readonly (ProfileLink & { readonly hint: string })[];
  readonly sources: readonly SourceLink[];
}

/** The values that stand open on the page; the others are folded away beneath them. */
const askedFirst: ReadonlySet<CharacteristicName> = new Set([
  'clean-volts',
  'highest-clean-step',
  'bass-boost',
  'bass-boost-frequency',
  'lower-corner',
  'upper-corner',
  'rear-to-front',
]);

/** The sentence of a profile; undefined where its family is missing or it has no output. */
export function sentenceOf(answers: Answers, profile: Entry<'profiles'>): SentencePart[] | undefined {
  const family = answers.base.families.get(profile.data.family);
  const output = answers.outputs.get(profile.id);
  if (!family || !output) return undefined;
  return answerSentence(output, {
    highestStep: family.data.volume.highestStep,
    channels: family.data.output.channels as readonly Channel[],
  });
}

/** The view of a profile; undefined where its family is not known. */
export function profilePage(answers: Answers, profile: Entry<'profiles'>): ProfilePageView | undefined {
  const { base } = answers;
  const { data, id } = profile;
  const family = base.families.get(data.family);
  const output = answers.outputs.get(id);
  const sentence = sentenceOf(answers, profile);
  if (!family || !output || !sentence) return undefined;
  const setting = output.conditions ? benchSetting(output.conditions) : '';
  const valueRow = (one: Characteristic): ValueRow => valueRowOf(output, one, setting);
  const sessions = base.sessionsOfProfile.get(id) ?? [];
  return {
    id,
    code: data.code,
    path: profilePath(id),
    title: `${data.code} – ${family.data.name}`,
    description: sentenceText(sentence),
    family: { id: family.id, name: family.data.name, path: unitPath(family.id) },
    system: systemLabel(data.system),
    systemKind: data.system,
    origin: originLabel(data.origin),
    measured: sessions.map((session) => ({
      date: longDate(session.data.date),
      path: sourcePath(session.data.source),
    })),
    measuredOn: sessions.map((session) => session.data.date),
    otherSpellings: data.otherSpellings,
    soldAs: data.soldAs,
    about: data.about,
    sentence,
    plans: planAnswerViews(answers, id),
    tables: tableAnswerViews(answers, id),
    book: readingBook(answers, id),
    setting,
    values: output.characteristics.filter((one) => askedFirst.has(one.name)).map(valueRow),
    headline: output.characteristics
      .filter((one) => askedFirst.has(one.name))
      .map((one) => ({
        label: characteristicLabel(one.name),
        text: formatQuantity(one),
        at: readAt(one.conditions),
        value: one.value,
        unit: one.unit,
        bound: one.bound,
      })),
    moreValues: output.characteristics.filter((one) => !askedFirst.has(one.name)).map(valueRow),
    otherValues: output.others.map(valueRow),
    levels: output.levelByStep.map((level) => ({
      step: level.step,
      volts: formatQuantity(level.volts),
      decibels: inDecibels(level.volts.value),
      thd: level.thdPercent === null ? '–' : `${formatNumber(level.thdPercent, 2)}\u00a0%`,
      clean: level.clean,
      readings: readingRows(level.readings),
    })),
    levelPlot: levelPlotData(output, family.data.volume),
    responsePlot: responsePlotData(output),
    readingsPath: sessions.length > 0 ? readingsPath(id) : undefined,
    traits: outputTraits(output),
    silentChannels: output.mutedChannels,
    missing: output.missing.map(({ name, reason }) => ({ label: characteristicLabel(name), reason })),
    statements: statementViews(answers, id),
    twins: twinsOf(answers, profile),
    behaviour: behaviourOf(output),
    normalised: normalisedSentences(output),
    agreement: agreementSentence(output),
    setAside: sessions.flatMap((session) => {
      const aside = setAsideFor(session, id);
      if (!aside) return [];
      const { reason, by, date } = aside;
      return [
        { session: session.id, path: sourcePath(session.data.source), reason, by, date: longDate(date) },
      ];
    }),
    sameAs: data.sameAs === undefined ? undefined : profileLink(answers, data.sameAs),
    tellApart: data.tellApart.flatMap(({ from, hint }) => {
      const link = profileLink(answers, from);
      return link ? [{ ...link, hint }] : [];
    }),
    sources: sourceLinks(answers, [...sessions.map((session) => session.data.source), ...data.sources]),
  };
}

/** The other profiles of the group whose outputs agree with this one's. */
function twinsOf(answers: Answers, profile: Entry<'profiles'>): ProfileLink[] {
  const groups = answers.outputGroups.get(profile.data.family)?.groups ?? [];
  const group = groups.find(({ profiles }) => profiles.includes(profile.id));
  return (group?.profiles ?? [])
    .filter((id) => id !== profile.id)
    .flatMap((id) => profileLink(answers, id) ?? []);
}

function profileLink(answers: Answers, id: string): ProfileLink | undefined {
  const profile = answers.base.profiles.get(id);
  return profile && { code: profile.data.code, path: profilePath(id) };
}

/** Volts as dBV and dBu; empty for silence, which has no level. */
function inDecibels(voltsRms: number): string {
  if (voltsRms <= 0) return '';
  return `${formatNumber(dbv(voltsRms), 1)}\u00a0dBV, ${formatNumber(dbu(voltsRms), 1)}\u00a0dBu`;
}

/** `mainSetting` is what the bench was set to under the main conditions, which a row does not repeat. */
function valueRowOf(output: ProfileOutput, one: Characteristic, mainSetting: string): ValueRow {
  const setting = benchSetting(one.conditions);
  return {
    anchor: valueAnchorOf(output, one),
    label: characteristicLabel(one.name),
    value: formatQuantity(one),
    at: readAt(one.conditions),
    setting: setting === mainSetting ? '' : setting,
    uncertainty: uncertaintyParts(one),
    readings: readingRows(one.readings),
  };
}

function levelPlotData(
  output: ProfileOutput,
  volume: { readonly lowestStep: number; readonly highestStep: number },
): LevelPlotData | undefined {
  const points = output.levelByStep.filter(({ volts }) => volts.value > 0);
  if (points.length < 2) return undefined;
  const step = output.characteristics.find((one) => one.name === 'highest-clean-step');
  const volts = output.characteristics.find((one) => one.name === 'clean-volts');
  return {
    ...volume,
    points: points.map((point) => ({
      step: point.step,
      volts: point.volts.value,
      uncertaintyVolts: point.volts.expandedUncertainty,
      clean: point.clean,
    })),
    clean:
      step && volts
        ? {
            step: step.value,
            volts: volts.value,
            label: formatQuantity(volts),
            reached: step.bound === 'exact',
          }
        : undefined,
  };
}

function responsePlotData(output: ProfileOutput): ResponsePlotData | undefined {
  if (output.responses.length === 0) return undefined;
  return {
    curves: output.responses.map(({ step, points }) => ({
      step,
      points: points.map(({ hz, level }) => ({
        hz,
        levelDb: level.value,
        uncertaintyDb: level.expandedUncertainty,
      })),
    })),
  };
}
