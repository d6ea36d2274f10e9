import { characteristicUnits } from '../../../schemas/index.ts';
import type { Finding, Place } from '../../base/index.ts';
import {
  type Change,
  type ComparedValue,
  evidenceFor,
  type Flip,
  flipsOf,
  type ProfileImpact,
  placeOfCause,
} from '../../impact/index.ts';
import { formatNumber, formatQuantity } from '../../measure/index.ts';
import type { Rule } from '../rule.ts';

export const flipWithoutSource: Rule = {
  id: 'flip-without-source',
  title: 'A change that turns an answer into another brings a source for it.',
  explanation:
    'Only told with --since, and by readback impact. A rider who was told “keep” yesterday and is told “reflash” today may ask why. So an edit that flips the verdict of a plan, changes what a table answers, or moves a value beyond its uncertainty has to bring something new: the entry cites a source it did not cite before, or one that was edited with it, or readings were added or a session is new. Plans are those of plans/ and every combination of an amplifier class with a speaker class. Wording changes no answer and is never named. Where several edits flip one answer together, one with a source speaks for all. If no source is needed, as for a slip of the pen put right, set the finding aside with that reason: such an exception may stay until its last day.',
  severity: 'warning',
  comparesStates: true,
  examples: [
    {
      title: 'a threshold raised, on nothing but the sources it had',
      file: 'tables/behind-an-amplifier.yaml',
      good: '"< 1"',
      bad: '"< 4"',
    },
    {
      title: 'a plan that asks for more, on the sources it had',
      file: 'plans/two-channel.yaml',
      good: 'leastVolts: 1',
      bad: 'leastVolts: 4',
      foundAt: '4,',
    },
  ],
  check: ({ change, readerFindings }) =>
    change ? flipFindings(change, new Set(readerFindings.map(({ place }) => place.file))) : [],
};

interface Told {
  readonly profile: ProfileImpact;
  readonly flip: Flip;
}

/** @param broken files that could not be read whole, or name what is not there: that is what is told of them. */
function flipFindings(change: Change, broken: ReadonlySet<string>): Finding[] {
  const { states, impact } = change;
  const byPlace = new Map<string, { place: Place; told: Told[] }>();
  for (const profile of impact.profiles) {
    for (const flip of flipsOf(profile)) {
      const { causes } = flip;
      if (causes.some((cause) => evidenceFor(states, impact.sheets, cause, profile.profile))) continue;
      if (
        causes.some((cause) => broken.has(placeOfCause(states, impact.sheets, cause, profile.profile).file))
      )
        continue;
      for (const cause of causes) {
        const place = placeOfCause(states, impact.sheets, cause, profile.profile);
        // Rules of a table are edited one by one; a sheet or another entry as a whole.
        const key = cause.kind === 'tables' ? `${place.file}:${place.line}:${place.column}` : place.file;
        const known = byPlace.get(key);
        const told = [...(known?.told ?? []), { profile, flip }];
        byPlace.set(key, { place: known && known.place.line <= place.line ? known.place : place, told });
      }
    }
  }
  return [...byPlace.values()].map(({ place, told }) => ({
    rule: 'flip-without-source',
    severity: 'warning',
    place,
    message: messageOf(told),
    help: 'Name in its sources what the change rests on; or set this aside in exceptions/, with the reason.',
    related: [],
  }));
}

function messageOf(told: readonly Told[]): string {
  const [first] = [...told].sort((a, b) => rank(a.flip) - rank(b.flip));
  const more = told.length > 1 ? `, and ${told.length - 1} more` : '';
  const answers = told.length === 1 ? 'an answer' : `${told.length} answers`;
  return `This changes ${answers} without a new source: ${first ? flipText(first) : ''}${more}.`;
}

/** What a rider would notice first. */
function rank(flip: Flip): number {
  if (flip.of === 'plan') return typeof flip.plan === 'string' ? 0 : 2;
  return flip.of === 'table' ? 1 : 3;
}

function flipText({ profile: { profile }, flip }: Told): string {
  switch (flip.of) {
    case 'plan': {
      const { plan, before, now } = flip;
      const named = typeof plan === 'string' ? `the plan “${plan}”` : combinationText(plan);
      return `for ${named}, “${profile}” goes from ${before} to ${now}`;
    }
    case 'table': {
      const [was, is] = [flip.before, flip.now].map(({ rules }) => rules.map((id) => `“${id}”`).join(', '));
      return `“${flip.table}” decided “${profile}” by ${was || 'no rule'}, and does by ${is || 'no rule'} now`;
    }
    case 'value': {
      const { name, before, now, inUnitsOfU } = flip;
      const unit = characteristicUnits[name];
      const text = (one: ComparedValue | undefined): string =>
        one ? formatQuantity({ ...one, unit }) : 'not known';
      const times =
        inUnitsOfU !== undefined && Number.isFinite(inUnitsOfU)
          ? ` (${formatNumber(Math.abs(inUnitsOfU), 1)}\u00a0U)`
          : '';
      return `${name.replaceAll('-', ' ')} of “${profile}” goes from ${text(before)} to ${text(now)}${times}`;
    }
  }
}

function combinationText({
  amplifier,
  front,
  rear,
}: Exclude<Extract<Flip, { of: 'plan' }>['plan'], string>): string {
  return [amplifier ?? 'no amplifier', front, ...(rear === undefined ? [] : [`${rear} behind`])].join(', ');
}
