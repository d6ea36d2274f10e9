/** What a kind of mistake is, and how the findings it leads to are judged. */
import { type Finding, MemoryFiles } from '../../src/base/index.ts';
import { checkContent } from '../../src/check/index.ts';
import { type Demo, type Edit, edited } from './demo.ts';
import { Dice } from './dice.ts';

/** A place the check may point at: a file and lines in it as they are after the edit. */
export interface Expected {
  readonly file: string;
  readonly lines: readonly number[] | 'any';
}

export interface Mistake {
  /** The change in words, for the report. */
  readonly what: string;
  readonly edits: readonly Edit[];
  /** Where the person has to look: the first finding must be at one of these. */
  readonly places: readonly Expected[];
}

export interface FaultKind {
  readonly name: string;
  /** The rule that must speak first; several where the same words are right from each of them. */
  readonly rule: string | readonly string[];
  /** What in the base contradicts the mistake: without it, no check could find it. */
  readonly shownBy: string;
  /** Findings beside those of `rule` at `places` that may come with it; {@link usualEchoes} where absent. */
  readonly mostEchoes?: number;
  readonly make: (dice: Dice, demo: Demo) => Mistake;
}

/** One mistake may lead to this many other findings before it counts as badly reported. */
export const usualEchoes = 2;

export type Outcome = 'found' | 'missed' | 'other rule first' | 'other place first' | 'too many echoes';

export interface Judgement {
  readonly kind: string;
  readonly what: string;
  readonly outcome: Outcome;
  readonly echoes: number;
  readonly findings: readonly string[];
}

/** Makes the mistake number `seed` of a kind and has the check judge it. */
export async function judge(kind: FaultKind, seed: number, demo: Demo): Promise<Judgement> {
  const mistake = kind.make(new Dice(seed, kind.name), demo);
  const { findings } = await checkContent(new MemoryFiles('content', edited(demo.files, mistake.edits)));
  const failing = findings.filter((one) => one.severity !== 'note');
  const rules = typeof kind.rule === 'string' ? [kind.rule] : kind.rule;
  const isExpected = (one: Finding): boolean =>
    rules.includes(one.rule) && mistake.places.some((place) => isAt(one, place));
  const echoes = failing.filter((one) => !isExpected(one)).length;
  const [first] = failing;
  const outcome: Outcome = !first
    ? 'missed'
    : !rules.includes(first.rule)
      ? 'other rule first'
      : !isExpected(first)
        ? 'other place first'
        : echoes > (kind.mostEchoes ?? usualEchoes)
          ? 'too many echoes'
          : 'found';
  const shown = failing.slice(0, 4).map((one) => `${one.place.file}:${one.place.line} ${one.rule}: ${one.message}`);
  return { kind: kind.name, what: mistake.what, outcome, echoes, findings: shown };
}

function isAt({ place }: Finding, { file, lines }: Expected): boolean {
  return place.file === file && (lines === 'any' || lines.includes(place.line));
}

/** A mistake on one line. */
export function onLine(demo: Demo, file: string, line: number, text: string): Mistake {
  return {
    what: `${file}:${line} “${demo.lines(file)[line - 1]}” → “${text}”`,
    edits: [demo.withLine(file, line, text)],
    places: [{ file, lines: [line] }],
  };
}
