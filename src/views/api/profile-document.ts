/** The document of a profile: the values of its page, as data. */
import type { ProfileDocument } from '../../../schemas/api/profile.ts';
import type { Answers } from '../../answers.ts';
import { type Entry, setAsideFor } from '../../base/index.ts';
import { type Characteristic, formatQuantity, type ProfileOutput } from '../../measure/index.ts';
import { sentenceText } from '../answer-sentence.ts';
import { tablesOfProfiles } from '../judged-tables.ts';
import { planPath, profilePath, readingsPath, tablePath } from '../paths.ts';
import { sentenceOf } from '../profile-page.ts';
import { publishedAgreement, publishedValue } from '../published-values.ts';
import { tableAnswerViews } from '../table-answers.ts';

/** Undefined where the profile's family is missing. `address` is that of the site. */
export function profileDocument(
  answers: Answers,
  address: string,
  profile: Entry<'profiles'>,
): ProfileDocument | undefined {
  const { base } = answers;
  const { id, data } = profile;
  const output = answers.outputs.get(id);
  const sentence = sentenceOf(answers, profile);
  if (!output || !sentence) return undefined;
  const sessions = base.sessionsOfProfile.get(id) ?? [];
  const groups = answers.outputGroups.get(data.family)?.groups ?? [];
  return {
    id,
    family: data.family,
    code: data.code,
    otherSpellings: data.otherSpellings,
    soldAs: data.soldAs,
    origin: data.origin,
    system: data.system,
    about: data.about,
    page: `${address}${profilePath(id)}`,
    readingsPage: sessions.length > 0 ? `${address}${readingsPath(id)}` : null,
    sentence: sentenceText(sentence),
    conditions: output.conditions ? { ...output.conditions } : null,
    characteristics: output.characteristics.map(withText),
    otherConditions: output.others.map(withText),
    ...curvesOf(output),
    boostBehaviour: output.boostBehaviour,
    silentChannels: output.mutedChannels as ProfileDocument['silentChannels'],
    agreement: output.agreement ? publishedAgreement(output.agreement) : null,
    missing: output.missing.map(({ name, reason }) => ({ name, reason })),
    plans: plansOf(answers, address, id),
    tables: tablesOf(answers, address, id),
    twins: (groups.find(({ profiles }) => profiles.includes(id))?.profiles ?? []).filter((one) => one !== id),
    sessions: sessions.map((session) => ({
      session: session.id,
      date: session.data.date,
      source: session.data.source,
      setAside: setAsideFor(session, id)?.reason ?? null,
    })),
    sources: [...new Set([...sessions.map((session) => session.data.source), ...data.sources])],
  };
}

function withText(one: Characteristic): ProfileDocument['characteristics'][number] {
  return { ...publishedValue(one), text: formatQuantity(one) };
}

function curvesOf(output: ProfileOutput): Pick<ProfileDocument, 'levels' | 'responses'> {
  return {
    levels: output.levelByStep.map(({ step, volts, thdPercent, clean }) => ({
      step,
      volts: volts.value,
      expandedUncertainty: volts.expandedUncertainty,
      thdPercent,
      clean,
    })),
    responses: output.responses.map(({ step, points }) => ({
      step,
      points: points.map(({ hz, level }) => ({
        hz,
        levelDb: level.value,
        expandedUncertaintyDb: level.expandedUncertainty,
      })),
    })),
  };
}

function plansOf(answers: Answers, address: string, id: string): ProfileDocument['plans'] {
  return (answers.planAnswers.get(id) ?? []).map(({ plan, verdict, possible, sentence, reasons }) => ({
    plan,
    name: answers.base.plans.get(plan)?.data.name ?? plan,
    page: `${address}${planPath(plan)}`,
    verdict,
    possible: [...possible],
    sentence,
    reasons: reasons.map(({ topic, outcome, text, readings }) => ({
      topic,
      outcome,
      text,
      readings: [...readings],
    })),
  }));
}

function tablesOf(answers: Answers, address: string, id: string): ProfileDocument['tables'] {
  const tables = tablesOfProfiles(answers);
  return tableAnswerViews(answers, id).flatMap((view, at) => {
    const entry = tables[at]?.entry;
    if (!entry) return [];
    return [
      {
        table: entry.id,
        question: view.question,
        page: `${address}${tablePath(entry.id)}`,
        settled: view.settled,
        answer: view.settled ? view.answer : null,
        dependsOn: [...view.dependsOn],
        borderline: view.borderline.map(({ label, value, settledBy }) => ({
          label,
          value: value === '' ? null : value,
          settledBy,
        })),
        rules: view.rules.map(({ number, answer, sureness, cases, say }) => ({
          rule: entry.data.rules[number - 1]?.id ?? '',
          answer,
          sureness,
          cases: [...cases],
          say: say === '' ? null : say,
        })),
      },
    ];
  });
}
