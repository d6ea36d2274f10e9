/** The one sentence that says what a profile puts out. */
import type { Channel } from '../../schemas/index.ts';
import { formatHz, formatNumber, formatQuantity } from '../measure/format.ts';
import { underMainConditions } from '../measure/main-conditions.ts';
import type { Characteristic, CharacteristicName, ProfileOutput } from '../measure/quantity.ts';
import { leastBoostDb } from '../measure/traits/bass.ts';
import { phrase, taggedParts } from '../words/index.ts';

/** A stretch of the sentence; `value` names the characteristic a number comes from, so that it can link there. */
export interface SentencePart {
  readonly text: string;
  readonly value?: CharacteristicName;
}

/** What the sentence needs to know of the unit. */
export interface UnitScale {
  readonly highestStep: number;
  readonly channels: readonly Channel[];
}

/** A bass that ends above here is worth a word, hertz: common practice, no source. */
const wordOfBassHz = 50;

/**
 * What a profile puts out, as stretches of one sentence: clean volts, bass boost, where the bass ends, rear
 * channels. What was not measured is said to be unknown, never left out.
 */
export function answerSentence(output: ProfileOutput, unit: UnitScale): SentencePart[] {
  if (!output.conditions) {
    return [{ text: phrase('Not measured yet: nobody has had this profile on a bench.') }];
  }
  const clauses = [
    cleanClause(output, unit),
    bassClause(output),
    lowEndClause(output),
    rearClause(output, unit),
  ].filter((clause) => clause.length > 0);
  const parts = clauses.flatMap((clause, index) => (index === 0 ? clause : [{ text: '; ' }, ...clause]));
  return [...parts, { text: '.' }];
}

/** The sentence as plain text. */
export function sentenceText(parts: readonly SentencePart[]): string {
  return parts.map((part) => part.text).join('');
}

function headline(output: ProfileOutput, name: CharacteristicName): Characteristic | undefined {
  return output.characteristics.find((one) => one.name === name);
}

/** A clause in parts: what a mark stands around is linked to the characteristic it names. */
function clause(text: string, marks: Readonly<Record<string, CharacteristicName>>): SentencePart[] {
  return taggedParts(text).map(({ tag, text: words }) => {
    const value = tag === undefined ? undefined : marks[tag];
    return value ? { text: words, value } : { text: words };
  });
}

function cleanClause(output: ProfileOutput, unit: UnitScale): SentencePart[] {
  const step = headline(output, 'highest-clean-step');
  const volts = headline(output, 'clean-volts');
  if (!step) return [{ text: phrase('How far it plays clean is not known') }];
  const values = { step: formatNumber(step.value, 0), last: unit.highestStep };
  const opening =
    step.bound === 'at-least'
      ? phrase('Clean at every step measured, up to <step>step {step} of {last}</step>', values)
      : step.value >= unit.highestStep
        ? phrase('Clean up to the last step, <step>{step} of {last}</step>', values)
        : phrase('Clean up to <step>step {step} of {last}</step>', values);
  const text = volts ? `${opening}: <volts>${formatQuantity(volts)}</volts>` : opening;
  return clause(text, { step: 'highest-clean-step', volts: 'clean-volts' });
}

function bassClause(output: ProfileOutput): SentencePart[] {
  const boost = headline(output, 'bass-boost');
  if (!boost) return [{ text: phrase('bass boost not known') }];
  const marks = { boost: boost.name };
  const strongest = strongerElsewhere(output, boost);
  if (strongest) {
    const values = {
      most: formatQuantity(strongest),
      hz: strongest.conditions.hz === undefined ? '?' : formatHz(strongest.conditions.hz),
      step: strongest.conditions.step ?? '?',
      other: boost.conditions.step ?? '?',
    };
    return isNoBoost(boost)
      ? clause(
          phrase(
            'bass boost <boost>{most}</boost> at {hz} at step {step}, but <boost>none</boost> at step {other}',
            values,
          ),
          marks,
        )
      : clause(
          phrase(
            'bass boost <boost>{most}</boost> at {hz} at step {step}, but <boost>{least}</boost> at step {other}',
            { ...values, least: formatQuantity(boost) },
          ),
          marks,
        );
  }
  if (isNoBoost(boost)) return clause(phrase('<boost>no bass boost</boost>'), marks);
  const { hz } = boost.conditions;
  return clause(
    hz === undefined
      ? phrase('bass boost <boost>{boost}</boost>', { boost: formatQuantity(boost) })
      : phrase('bass boost <boost>{boost}</boost> at {hz}', {
          boost: formatQuantity(boost),
          hz: formatHz(hz),
        }),
    marks,
  );
}

/** The boost at another step of the same session conditions, where it is plainly stronger than the headline one. */
function strongerElsewhere(output: ProfileOutput, boost: Characteristic): Characteristic | undefined {
  const [strongest] = underMainConditions(output, 'bass-boost')
    .filter((one) => one !== boost && one.bound === 'exact')
    .sort((a, b) => b.value - a.value);
  if (!strongest || isNoBoost(strongest)) return undefined;
  const margin = Math.hypot(strongest.expandedUncertainty, boost.expandedUncertainty);
  return strongest.value - boost.value > Math.max(margin, plainDifferenceDb) ? strongest : undefined;
}

/** Boosts that differ by less are not worth two numbers in one sentence, dB: common practice, no source. */
const plainDifferenceDb = 1;

/** True where the highest level in the bass is not plainly above that at 1 kHz. */
function isNoBoost(boost: Characteristic): boolean {
  return boost.bound !== 'exact' || boost.value < Math.max(leastBoostDb, boost.expandedUncertainty);
}

function lowEndClause(output: ProfileOutput): SentencePart[] {
  const corner = headline(output, 'lower-corner');
  if (corner?.bound !== 'exact' || corner.value < wordOfBassHz) return [];
  return clause(phrase('bass ends at <corner>{hz}</corner>', { hz: formatQuantity(corner) }), {
    corner: corner.name,
  });
}

function rearClause(output: ProfileOutput, unit: UnitScale): SentencePart[] {
  const rears = unit.channels.filter((channel) => channel === 'RL' || channel === 'RR');
  if (rears.length === 0) return [{ text: phrase('the unit has no rear outputs') }];
  const level = headline(output, 'rear-to-front');
  const muted = rears.filter((channel) => output.mutedChannels.includes(channel));
  if (muted.length === rears.length) return [mayLink(phrase('rear channels silent'), level)];
  if (muted.length > 0) {
    const text =
      muted[0] === 'RL'
        ? phrase('rear left silent, the other rear channel plays')
        : phrase('rear right silent, the other rear channel plays');
    return [mayLink(text, level)];
  }
  if (!level) return [{ text: phrase('rear channels not measured') }];
  const marks = { level: level.name };
  if (Math.abs(level.value) <= Math.max(level.expandedUncertainty, equalWithinDb)) {
    return clause(phrase('rear channels play, <level>as loud as the front</level>'), marks);
  }
  const size = formatQuantity({ ...level, value: Math.abs(level.value), expandedUncertainty: 0 });
  return clause(
    level.value < 0
      ? phrase('rear channels play, <level>{size} below front</level>', { size })
      : phrase('rear channels play, <level>{size} above front</level>', { size }),
    marks,
  );
}

/** Levels nearer than this are called equally loud, dB: common practice, no source. */
const equalWithinDb = 0.5;

function mayLink(text: string, level: Characteristic | undefined): SentencePart {
  return level ? { text, value: level.name } : { text };
}
