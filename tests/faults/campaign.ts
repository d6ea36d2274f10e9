/** Many mistakes, or many harmless edits, spread evenly over their kinds, and what the check made of them. */
import { type Finding, MapMemory, type Memory, MemoryFiles, noMemory } from '../../src/base/index.ts';
import { checkContent } from '../../src/check/index.ts';
import { type Demo, type Edit, edited } from './demo.ts';
import { Dice } from './dice.ts';
import { type HarmlessKind, harmlessKinds } from './harmless.ts';
import { type FaultKind, failingOf, type Judgement, judgement, shown } from './kind.ts';
import { faultKinds } from './kinds/index.ts';

/** How a campaign has its edits checked: with the memory of a first run, as in daily use, or anew each time. */
export type Checking = (edits: readonly Edit[]) => Promise<readonly Finding[]>;

export function anew(demo: Demo): Checking {
  return (edits) => check(demo, edits, noMemory);
}

/** As a second run does it: what the edit has not touched comes from a first run over the demo. */
export async function remembering(demo: Demo): Promise<Checking> {
  const first = new MapMemory();
  await check(demo, [], first);
  const known = JSON.parse(JSON.stringify([...first.used])) as [string, unknown][];
  return (edits) => check(demo, edits, new MapMemory(known));
}

async function check(demo: Demo, edits: readonly Edit[], memory: Memory): Promise<readonly Finding[]> {
  return (await checkContent(new MemoryFiles('content', edited(demo.files, edits)), { memory })).findings;
}

/** `count` cases over `kinds`, kind by kind in turn, each with a seed of its own. */
function* cases<K>(kinds: readonly K[], count: number): Generator<{ kind: K; seed: number }> {
  for (let at = 0; at < count; at += 1) {
    const kind = kinds[at % kinds.length];
    if (kind) yield { kind, seed: Math.floor(at / kinds.length) + 1 };
  }
}

/** Makes `count` mistakes and judges what is said of each. */
export async function faultCampaign(
  demo: Demo,
  count: number,
  checking: Checking,
  kinds: readonly FaultKind[] = faultKinds,
): Promise<Judgement[]> {
  const judgements: Judgement[] = [];
  for (const { kind, seed } of cases(kinds, count)) {
    const mistake = kind.make(new Dice(seed, kind.name), demo);
    judgements.push(judgement(kind, mistake, await checking(mistake.edits)));
  }
  return judgements;
}

/** A harmless edit that the check finds fault with. */
export interface FalseAlarm {
  readonly kind: string;
  readonly what: string;
  readonly findings: readonly string[];
}

/** Makes `count` harmless edits; gives those that something was said of. */
export async function harmlessCampaign(
  demo: Demo,
  count: number,
  checking: Checking,
  kinds: readonly HarmlessKind[] = harmlessKinds,
): Promise<FalseAlarm[]> {
  const alarms: FalseAlarm[] = [];
  for (const { kind, seed } of cases(kinds, count)) {
    const { what, edits } = kind.make(new Dice(seed, kind.name), demo);
    const failing = failingOf(await checking(edits));
    if (failing.length > 0) alarms.push({ kind: kind.name, what, findings: shown(failing) });
  }
  return alarms;
}

/** `157 faults of 157 kinds: 150 found, 7 missed; echoes: 0 in 140, 1 in 10`. */
export function countsLine(judgements: readonly Judgement[]): string {
  const count = <T>(values: readonly T[]): string =>
    [...new Set(values)]
      .sort()
      .map((value) => `${value}: ${values.filter((one) => one === value).length}`)
      .join(', ');
  const kinds = new Set(judgements.map(({ kind }) => kind)).size;
  return [
    `${judgements.length} faults of ${kinds} kinds`,
    count(judgements.map(({ outcome }) => outcome)),
    `echoes of a fault: ${count(judgements.filter(({ outcome }) => outcome !== 'missed').map(({ echoes }) => Math.min(echoes, 9)))} (9 stands for more)`,
  ].join('; ');
}

/** What went wrong, one paragraph a case. */
export function report(cases: readonly (Judgement | FalseAlarm)[]): string {
  return cases
    .map((one) =>
      [`${'outcome' in one ? one.outcome : 'false alarm'} [${one.kind}] ${one.what}`, ...one.findings].join(
        '\n    ',
      ),
    )
    .join('\n');
}
