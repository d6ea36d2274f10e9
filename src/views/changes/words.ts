/** What differs between two states of the content, in words. */
import { characteristicUnits } from '../../../schemas/index.ts';
import type { Answers } from '../../answers.ts';
import type { Combination, FactChange, States, TableAnswerChange, ValueChange } from '../../impact/index.ts';
import { formatNumber, formatQuantity } from '../../measure/format.ts';
import { orList, phrase } from '../../words/index.ts';
import { characteristicLabel } from '../characteristic-label.ts';
import { answerWords, brokenWords, noAnswerWords } from '../table-outcomes.ts';
import { traitWord, valueWords } from '../table-words.ts';
import { channelLabel, originLabel, systemLabel } from '../wording.ts';

export function factLabel(fact: FactChange['fact']): string {
  const labels: Readonly<Record<FactChange['fact'], string>> = {
    system: phrase('Meant for'),
    origin: phrase('Origin'),
    'boost-behaviour': phrase('Bass boost with the volume'),
    'silent-outputs': phrase('Silent while the front plays'),
  };
  return labels[fact];
}

/** What a value is called, what it was and what it is: “not known” where it is none. */
export function valueTexts({ name, before, now }: ValueChange): { label: string; was: string; is: string } {
  const [was, is] = [before, now].map((one) =>
    one ? formatQuantity({ ...one, unit: characteristicUnits[name] }) : phrase('not known'),
  );
  return { label: characteristicLabel(name), was: was ?? '', is: is ?? '' };
}

/** Whether a rider would read another value: it moved beyond its uncertainty, and is written differently for it. */
export function isToldApart(change: ValueChange): boolean {
  const { before, now, hasMoved } = change;
  const { was, is } = valueTexts(change);
  return hasMoved && (before?.bound !== now?.bound || was !== is);
}

/** How far it moved: “+2.3 U”; empty where there is no such number. */
export function inUnitsOfUText({ inUnitsOfU }: ValueChange): string {
  if (inUnitsOfU === undefined || !Number.isFinite(inUnitsOfU)) return '';
  return `${inUnitsOfU > 0 ? '+' : ''}${formatNumber(inUnitsOfU, 1)}\u00a0U`;
}

export function factTexts({ fact, before, now }: FactChange): { label: string; was: string; is: string } {
  const words = (value: string): string => {
    if (fact === 'system') return systemLabel(value as Parameters<typeof systemLabel>[0]);
    if (fact === 'origin') return originLabel(value as Parameters<typeof originLabel>[0]);
    if (fact === 'boost-behaviour') return traitWord(fact, value) ?? value;
    if (value === '') return phrase('none');
    return value.split(', ').map(channelLabel).join(', ');
  };
  return { label: factLabel(fact), was: words(before), is: words(now) };
}

/** What a table answered and answers in the first case that differs, and which case that is. */
export function tableTexts(
  states: States,
  { table, before: was, now: is, cases, differing, example }: TableAnswerChange,
): { question: string; was: string; is: string; where: string } {
  const { before, now } = states;
  const entry = now.base.tables.get(table)?.data;
  const said = Object.entries(example).flatMap(([id, value]) => {
    const input = entry?.inputs.find((one) => one.id === id);
    const type = now.tables.get(table)?.table?.inputs.find((one) => one.id === id)?.type;
    return input && type ? [`${input.label}: ${valueWords(value, type, input)}`] : [];
  });
  const where =
    differing === 1
      ? said.join(', ')
      : phrase('in {differing} of {cases} cases, such as {example}', {
          differing,
          cases,
          example: said.join(', '),
        });
  return {
    question: entry?.question ?? table,
    was: answersText(before, states.idBefore('tables', table), was),
    is: answersText(now, table, is),
    where: said.length === 0 ? '' : cases === differing ? phrase('whatever is planned') : where,
  };
}

function answersText({ tables }: Answers, id: string, { answers }: TableAnswerChange['now']): string {
  const outputs = (tables.get(id)?.table?.outputs ?? []).map(({ id: output, label, type }) => {
    const unit = type.kind === 'number' ? type.unit : undefined;
    return { id: output, label, values: [], ...(unit === undefined ? {} : { unit }) };
  });
  const texts = answers.flatMap((one) => {
    if (one.broken !== undefined) return [brokenWords()];
    if (one.answers.length === 0) return [noAnswerWords()];
    return [one.answers.map((answer) => answerWords(Object.values(answer), outputs)).join(phrase(', then '))];
  });
  return orList(texts.map((text) => `“${text}”`));
}

/** A combination by the names of its classes: “Four channels, medium; fairing, coaxial; the same behind”. */
export function combinationText({ now }: States, { amplifier, front, rear }: Combination): string {
  const name = (id: string): string => now.base.equipment.get(id)?.data.name ?? id;
  return [
    amplifier === undefined ? phrase('no amplifier') : name(amplifier),
    name(front),
    ...(rear === undefined ? [] : [phrase('the same behind')]),
  ].join('; ');
}
