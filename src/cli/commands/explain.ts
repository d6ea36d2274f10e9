/** `readback explain CODE --unit FAMILY`: what does this code put out, and does it suit a plan? */
import type { ExplainResult } from '../../../schemas/results/explain.ts';
import { type Answers, readAnswers } from '../../answers.ts';
import { CannotRun, type Entry } from '../../base/index.ts';
import { formatHz, formatQuantity } from '../../measure/index.ts';
import { answerSentence, sentenceText } from '../../views/answer-sentence.ts';
import { agreementSentence } from '../../views/behaviour.ts';
import { publishedAgreement, publishedValue } from '../../views/published-values.ts';
import { counted } from '../../words/index.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, printJson } from '../command.ts';
import { profileWithCode } from '../profile-with-code.ts';
import { unitOf } from '../unit.ts';

export interface ExplainOptions extends ContentOption, JsonOption {
  readonly unit: string;
}

export async function explain(typed: string, options: ExplainOptions, output: Output): Promise<number> {
  const { answers } = await readAnswers(options.content);
  const family = unitOf(answers.base, options.unit);
  const profile = profileWithCode(answers.base, family, typed, output);
  if (!profile) return exitCodes.findings;
  const result = explainResult(answers, profile, family);
  if (options.json) printJson(output, result);
  else printText(result, family, answers, output);
  return exitCodes.ok;
}

export function explainResult(
  answers: Answers,
  profile: Entry<'profiles'>,
  family: Entry<'families'>,
): ExplainResult {
  const computed = answers.outputs.get(profile.id);
  if (!computed)
    throw new CannotRun(`“${profile.id}” has no family that can be read.`, 'Run readback check.');
  const sentence = sentenceText(
    answerSentence(computed, {
      highestStep: family.data.volume.highestStep,
      channels: family.data.output.channels,
    }),
  );
  return {
    profile: profile.id,
    family: family.id,
    code: profile.data.code,
    sentence,
    characteristics: computed.characteristics.map(publishedValue),
    otherConditions: computed.others.map(publishedValue),
    agreement: computed.agreement ? publishedAgreement(computed.agreement) : null,
    missing: [...computed.missing],
    plans: (answers.planAnswers.get(profile.id) ?? []).map(({ plan, verdict, sentence }) => ({
      plan,
      verdict,
      sentence,
    })),
  };
}

function printText(result: ExplainResult, family: Entry<'families'>, answers: Answers, output: Output): void {
  output.out(`${result.code}  ${family.data.name}`);
  output.out(result.sentence);
  output.out('');
  const computed = answers.outputs.get(result.profile);
  for (const one of computed?.characteristics ?? []) {
    const { step, hz, loadOhms, supplyVolts } = one.conditions;
    const conditions = [
      ...(step === undefined ? [] : [`step ${step}`]),
      ...(hz === undefined ? [] : [formatHz(hz)]),
      `${loadOhms} Ω`,
      `${supplyVolts} V supply`,
    ].join(', ');
    const from = `${counted(one.readings.length, 'reading')}: ${one.sources.join(', ')}`;
    output.out(`  ${one.name.padEnd(22)} ${formatQuantity(one).padEnd(26)} ${conditions}; ${from}`);
  }
  const agreement = computed && agreementSentence(computed);
  if (agreement) output.out(`  ${agreement}`);
  for (const { name, reason } of result.missing) output.out(`  ${name.padEnd(22)} not known: ${reason}`);
  output.out('');
  for (const { plan, verdict, sentence } of result.plans) {
    const name = answers.base.plans.get(plan)?.data.name ?? plan;
    output.out(`  ${name}\n    ${verdict.replaceAll('-', ' ')}. ${sentence}`);
  }
}
