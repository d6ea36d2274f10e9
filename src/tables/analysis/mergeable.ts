/** Rules that one rule can say: same answer, tests that differ in one input only, together one S-FEEL test. */
import { testText } from '../grid/describe-test.ts';
import type { GridInput } from '../grid/grid.ts';
import { runsOf, setOf } from '../grid/set-of.ts';
import { answerKey, countsTwice, orderMatters } from './precedence.ts';
import { type Cube, inputsOf, isEmpty, meet, piecesIn, type Space } from './space.ts';

export interface Mergeable {
  /** The ids of the rules, in the order of the table. */
  readonly rules: readonly string[];
  /** The rule in whose place the merged one stands; the others go. */
  readonly at: string;
  /** The input their tests differ in. */
  readonly input: string;
  /** The merged test. */
  readonly test: string;
}

interface Member {
  readonly rule: number;
  /** What its test of the input lets through: indices of pieces, rising. */
  readonly pieces: readonly number[];
}

/**
 * Each of them alone changes no answer. Numbers and dates are merged where they follow on each other, values of a choice
 * always. Where the order of the rules counts, a rule is moved past another only if the two never hold together or answer
 * alike; where every rule that holds counts, rules that hold together are not merged.
 */
export function* mergeableIn(space: Space): Generator<Mergeable> {
  const { table } = space;
  const live = [...table.rules.keys()].filter((rule) => !isEmpty(space, space.rules[rule] as Cube));
  const answers = table.rules.map((_, rule) => answerKey(table, rule));
  const pieces = space.rules.map((cube) => piecesIn(space, cube));
  for (const input of inputsOf(space)) {
    const grid = space.grid[input] as GridInput;
    const alike = Map.groupBy(live, (rule) => {
      const cube = space.rules[rule] as Cube;
      const rest = [...cube.subarray(0, space.starts[input]), ...cube.subarray(space.starts[input + 1])];
      return `${answers[rule]} ${rest.join(' ')}`;
    });
    for (const group of alike.values()) {
      if (group.length < 2) continue;
      const members = withoutSubsumed(
        group.map((rule) => ({ rule, pieces: pieces[rule]?.[input] ?? [] })),
        countsTwice(table),
      );
      for (const { some, at } of mergesOf(space, grid, members)) {
        const rules = some.map(({ rule }) => rule).sort((a, b) => a - b);
        yield {
          rules: rules.map((rule) => table.rules[rule]?.id ?? ''),
          at: table.rules[at]?.id ?? '',
          input: grid.input.id,
          test: testText(setOf(grid, together(some)), grid.input),
        };
      }
    }
  }
}

/** Members that say more than another; none that overlap another where `apart` is asked for. */
function withoutSubsumed(members: readonly Member[], apart: boolean): Member[] {
  const kept: Member[] = [];
  for (const member of members.toSorted((a, b) => b.pieces.length - a.pieces.length || a.rule - b.rule)) {
    const inside = kept.some(({ pieces }) => member.pieces.every((piece) => pieces.includes(piece)));
    const overlaps = kept.some(({ pieces }) => member.pieces.some((piece) => pieces.includes(piece)));
    if (!inside && !(apart && overlaps)) kept.push(member);
  }
  return kept.sort((a, b) => a.rule - b.rule);
}

interface Merge {
  readonly some: readonly Member[];
  readonly at: number;
}

/** Groups of members, each in one group at most, that can be merged. */
function* mergesOf(space: Space, grid: GridInput, members: readonly Member[]): Generator<Merge> {
  for (const group of isOneTest(grid, together(members)) ? [members] : chains(grid, members)) {
    const at = placeFor(space, group);
    if (group.length > 1 && at !== undefined) {
      yield { some: group, at };
      continue;
    }
    // Not all at once: pairs then.
    const left = group.toSorted(byPiece);
    for (let one = left.shift(); one; one = left.shift()) {
      const [next] = left;
      if (!next || !isOneTest(grid, together([one, next]))) continue;
      const place = placeFor(space, [one, next]);
      if (place === undefined) continue;
      left.shift();
      yield { some: [one, next], at: place };
    }
  }
}

const byPiece = (a: Member, b: Member): number => (a.pieces[0] ?? 0) - (b.pieces[0] ?? 0);

/** Members that follow on each other, as long as together they are one test. */
function chains(grid: GridInput, members: readonly Member[]): Member[][] {
  const found: Member[][] = [];
  for (const member of members.toSorted(byPiece)) {
    const last = found.at(-1);
    if (last && isOneTest(grid, together([...last, member]))) last.push(member);
    else found.push([member]);
  }
  return found;
}

function together(members: readonly Member[]): number[] {
  return [...new Set(members.flatMap(({ pieces }) => pieces))].sort((a, b) => a - b);
}

/**
 * Whether pieces are one range of numbers or dates, or values of a choice. “Not known” and something that is known are
 * one test only where that is any value.
 */
function isOneTest({ input, pieces }: GridInput, chosen: readonly number[]): boolean {
  if (chosen.length === pieces.length) return true;
  if (chosen.some((piece) => 'missing' in (pieces[piece] ?? {}))) return false;
  return !(input.type.kind === 'number' || input.type.kind === 'date') || runsOf(chosen).length === 1;
}

/** The rule in whose place all can stand: the first, or else the last; undefined where other rules are in the way. */
function placeFor(space: Space, members: readonly Member[]): number | undefined {
  const rules = members.map(({ rule }) => rule);
  const clear = (from: number, to: number, moved: number): boolean => {
    for (let between = from + 1; between < to; between += 1) {
      if (rules.includes(between) || !orderMatters(space.table, between, moved)) continue;
      if (meet(space, space.rules[between] as Cube, space.rules[moved] as Cube)) return false;
    }
    return true;
  };
  const [first, last] = [Math.min(...rules), Math.max(...rules)];
  if (rules.every((rule) => clear(first, rule, rule))) return first;
  return rules.every((rule) => clear(rule, last, rule)) ? last : undefined;
}
