/**
 * Which unit a rider has: by model line and year, and by what can be seen of the face plate. Questions are made
 * from the measured geometry, and only the one that tells most is asked.
 */
import type { Family } from '../../schemas/index.ts';
import { phrase } from '../words/index.ts';

/** What is known of a unit before anything of it has been read. */
export interface SightedUnit {
  readonly id: string;
  readonly name: string;
  readonly fitment: Family['fitment'];
  readonly face: Pick<Family['face'], 'widthMm' | 'heightMm'> & {
    readonly screen: Pick<Family['face']['screen'], 'display' | 'touch'>;
    readonly controls: readonly Pick<Family['face']['controls'][number], 'kind' | 'label'>[];
  };
  readonly features: readonly string[];
}

export interface SightAnswer {
  readonly id: string;
  readonly text: string;
  /** The units it leaves, by id. */
  readonly units: readonly string[];
}

export interface SightQuestion {
  readonly id: string;
  readonly ask: string;
  /** At least two, of which each leaves at least one unit. */
  readonly answers: readonly SightAnswer[];
}

/** What a rider has said: a question's id to an answer's, or to `unsure`. */
export type SightAnswers = Readonly<Record<string, string>>;

/** Said where a rider cannot tell: it excludes nothing, and the question is not asked again. */
export const unsure = 'unsure';

/** A way a face can be seen to differ. `see` gives the id of the answer that fits a unit. */
interface Sight {
  readonly id: string;
  readonly ask: string;
  readonly answers: Readonly<Record<string, string>>;
  readonly see: (face: SightedUnit['face']) => string;
}

const yesOrNo = () => ({ yes: phrase('Yes'), no: phrase('No') });
const yes = (is: boolean): string => (is ? 'yes' : 'no');
/** A face this many times as wide as high is seen to be slim. */
const slimRatio = 2.2;

/** Easiest to see first: what can be felt with gloves on, then what needs light, then what needs the ignition. */
const sights = (): readonly Sight[] => [
  {
    id: 'knobs',
    ask: phrase('How many knobs that turn are on the face?'),
    answers: {
      '0': phrase('None'),
      '1': phrase('One'),
      '2': phrase('Two'),
      more: phrase('More than two'),
    },
    see: ({ controls }) => {
      const knobs = controls.filter(({ kind }) => kind === 'knob').length;
      return knobs > 2 ? 'more' : String(knobs);
    },
  },
  {
    id: 'keys',
    ask: phrase('Are there keys to press on the face, outside the screen?'),
    answers: yesOrNo(),
    see: ({ controls }) => yes(controls.some(({ kind }) => kind === 'key')),
  },
  {
    id: 'numbered',
    ask: phrase('Do some of the keys bear numbers?'),
    answers: yesOrNo(),
    see: ({ controls }) =>
      yes(controls.some(({ kind, label }) => kind === 'key' && /^\d+$/.test(label.trim()))),
  },
  {
    id: 'slim',
    ask: phrase('Is the face slim, more than twice as wide as high?'),
    answers: yesOrNo(),
    see: ({ widthMm, heightMm }) => yes(widthMm >= slimRatio * heightMm),
  },
  {
    id: 'display',
    ask: phrase('With the ignition on, what are the characters on the screen made of?'),
    answers: {
      'dot-matrix': phrase('Square dots that can be counted'),
      'seven-segment': phrase('Seven straight strokes, as on a clock'),
      'anti-aliased': phrase('Smooth letters, as on a telephone'),
    },
    see: ({ screen }) => screen.display,
  },
  {
    id: 'touch',
    ask: phrase('With the ignition on, does the screen answer to a finger?'),
    answers: yesOrNo(),
    see: ({ screen }) => yes(screen.touch),
  },
];

/**
 * The units fitted to a model line in a year. Without a model all of them, whatever the year; without a year
 * those of all its years.
 */
export function fittedTo<Unit extends SightedUnit>(
  units: readonly Unit[],
  model: string | undefined,
  year: number | undefined,
): Unit[] {
  if (model === undefined) return [...units];
  return units.filter(({ fitment }) =>
    fitment.some(
      (one) => one.model === model && (year === undefined || (one.fromYear <= year && year <= one.toYear)),
    ),
  );
}

/** The units that look as the rider says; answers to questions that do not exist exclude nothing. */
export function looksLike<Unit extends SightedUnit>(units: readonly Unit[], said: SightAnswers): Unit[] {
  const all = sights();
  return units.filter(({ id, face }) =>
    Object.entries(said).every(([question, answer]) => {
      if (answer === unsure) return true;
      if (question === featureQuestion) return answer.split(' ').includes(id);
      const sight = all.find((one) => one.id === question);
      return !sight || !Object.hasOwn(sight.answers, answer) || sight.see(face) === answer;
    }),
  );
}

const featureQuestion = 'feature';

/**
 * The question that tells most about which of `units` it is: the one with the greatest expected information
 * (Shannon), of equals the easiest to see. Where the faces differ in nothing that is asked, the telling features
 * themselves are put to the rider. Undefined where one unit or none is left, or nothing more can be asked.
 */
export function nextQuestion(units: readonly SightedUnit[], said: SightAnswers): SightQuestion | undefined {
  if (units.length < 2) return undefined;
  let best: { question: SightQuestion; bits: number } | undefined;
  for (const { id, ask, answers, see } of sights()) {
    if (Object.hasOwn(said, id)) continue;
    const told = Object.entries(answers).flatMap(([answer, text]): SightAnswer[] => {
      const fitting = units.filter(({ face }) => see(face) === answer).map((unit) => unit.id);
      return fitting.length === 0 ? [] : [{ id: answer, text, units: fitting }];
    });
    const bits = informationBits(told, units.length);
    if (told.length > 1 && bits > (best?.bits ?? 0) + 1e-9)
      best = { question: { id, ask, answers: told }, bits };
  }
  return best?.question ?? (Object.hasOwn(said, featureQuestion) ? undefined : byFeature(units));
}

function informationBits(answers: readonly SightAnswer[], all: number): number {
  return answers.reduce((sum, { units }) => {
    const share = units.length / all;
    return sum - share * Math.log2(share);
  }, 0);
}

/** Each unit by the first of its features that no other of them names; the rest by having none of those. */
function byFeature(units: readonly SightedUnit[]): SightQuestion | undefined {
  const rest: string[] = [];
  const answers = units.flatMap(({ id, features }): SightAnswer[] => {
    const others = new Set(units.filter((one) => one.id !== id).flatMap((one) => one.features));
    const own = features.find((feature) => !others.has(feature));
    if (own === undefined) rest.push(id);
    return own === undefined ? [] : [{ id, text: own, units: [id] }];
  });
  if (rest.length > 0) answers.push({ id: rest.join(' '), text: phrase('None of these'), units: rest });
  return answers.length < 2
    ? undefined
    : { id: featureQuestion, ask: phrase('Which of these do you see?'), answers };
}
