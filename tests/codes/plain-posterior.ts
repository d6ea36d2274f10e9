/** The posterior by the plain way: each code compared by itself, nothing kept from one text to the next. */
import { compare } from '../../src/codes/alignment.ts';
import { canonicalCode } from '../../src/codes/canonical-code.ts';
import { channelOf, relativeChannel, unchangedChance } from '../../src/codes/channel.ts';
import {
  otherFamilyWeight,
  otherSpellingWeight,
  prior,
  stoppedEarly,
  strangerTypedAsKnown,
} from '../../src/codes/constants.ts';
import type { CodeEntry, CodeIndex } from '../../src/codes/index.ts';
import { modelOf } from '../../src/codes/index.ts';
import { shownForm } from '../../src/codes/normalise.ts';
import { strangerRatio } from '../../src/codes/strangers.ts';

export interface PlainPosterior {
  /** Of each entry of the index, in its order. */
  readonly probabilities: readonly number[];
  /** Likelier the beginning of the entry's code than all of it. */
  readonly isBeginning: readonly boolean[];
  /** The spelling of each entry that fits best, unless none fits at all. */
  readonly best: readonly ({ readonly written: string } | undefined)[];
  readonly noneOfThese: number;
}

/** Bayes' rule as `src/codes/posterior.ts` states it, for a canonical text. */
export function plainPosterior(
  { entries, familyLengths }: Pick<CodeIndex, 'entries' | 'familyLengths'>,
  text: string,
  family: string | undefined,
): PlainPosterior {
  const weight = (entry: CodeEntry): number =>
    family === undefined || entry.family === family ? 1 : otherFamilyWeight;
  const all = entries.reduce((sum, entry) => sum + weight(entry), 0);
  const spellings = entries.map(({ code, otherSpellings, display }) => ({
    model: modelOf(display),
    // A spelling that comes to the same canonical form as one before it is none.
    ways: [...Map.groupBy([code, ...otherSpellings], canonicalCode).values()].flatMap((alike) =>
      alike.slice(0, 1),
    ),
    code,
  }));
  const isKnown = spellings.some(({ ways }) => ways.some((way) => canonicalCode(way) === text));
  let relatives = 0;
  const isBeginning: boolean[] = [];
  const best: { written: string }[] = [];
  const joint = spellings.map(({ model, ways, code }, at) => {
    let most = 0;
    for (const written of ways) {
      const canonical = canonicalCode(written);
      const shown = shownForm(written);
      const worth = (weight(entries[at] as CodeEntry) / all) * (written === code ? 1 : otherSpellingWeight);
      const ratio = (how = channelOf(model)) => {
        const { complete, beginning } = compare(text, canonical, model, { shown, how });
        return { whole: (1 - stoppedEarly) * complete, beginning };
      };
      const { whole, beginning } = ratio();
      const related = ratio(relativeChannel(model, canonical.length));
      const unchanged = unchangedChance(canonical.length) * (whole + beginning);
      if (!isKnown) {
        relatives += prior.relative * worth * Math.max(0, related.whole + related.beginning - unchanged);
      }
      if (prior.known * worth * (whole + beginning) <= most) continue;
      most = prior.known * worth * (whole + beginning);
      isBeginning[at] = beginning > whole;
      best[at] = { written };
    }
    return most;
  });
  const stranger =
    prior.stranger * strangerRatio(familyLengths, text, family) * (isKnown ? strangerTypedAsKnown : 1);
  const total = joint.reduce((sum, each) => sum + each, stranger + relatives);
  return {
    probabilities: joint.map((each) => each / total),
    isBeginning,
    best,
    noneOfThese: (stranger + relatives) / total,
  };
}
