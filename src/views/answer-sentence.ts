/** The one sentence that says what a profile puts out. */
import type { Channel } from '../../schemas/index.ts';
import { formatHz, formatNumber, formatQuantity } from '../measure/format.ts';
import { underMainConditions } from '../measure/main-conditions.ts';
import type { Characteristic, CharacteristicName, ProfileOutput } from '../measure/quantity.ts';
import { leastBoostDb } from '../measure/traits/bass.ts';

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
    return [{ text: 'Not measured yet: nobody has had this profile on a bench.' }];
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

function cleanClause(output: ProfileOutput, unit: UnitScale): SentencePart[] {
  const step = headline(output, 'highest-clean-step');
  const volts = headline(output, 'clean-volts');
  if (!step) return [{ text: 'How far it plays clean is not known' }];
  const number = formatNumber(step.value, 0);
  const stepPart = { text: `step ${number} of ${unit.highestStep}`, value: step.name };
  const opening: SentencePart[] =
    step.bound === 'at-least'
      ? [{ text: 'Clean at every step measured, up to ' }, stepPart]
      : step.value >= unit.highestStep
        ? [
            { text: 'Clean up to the last step, ' },
            { text: `${number} of ${unit.highestStep}`, value: step.name },
          ]
        : [{ text: 'Clean up to ' }, stepPart];
  if (!volts) return opening;
  return [...opening, { text: ': ' }, { text: formatQuantity(volts), value: volts.name }];
}

function bassClause(output: ProfileOutput): SentencePart[] {
  const boost = headline(output, 'bass-boost');
  if (!boost) return [{ text: 'bass boost not known' }];
  const number = { text: formatQuantity(boost), value: boost.name };
  const strongest = strongerElsewhere(output, boost);
  if (strongest) {
    return [
      { text: `bass boost ` },
      { text: formatQuantity(strongest), value: boost.name },
      { text: `${atHz(strongest)} at step ${strongest.conditions.step ?? '?'}, but ` },
      isNoBoost(boost) ? { text: 'none', value: boost.name } : number,
      { text: ` at step ${boost.conditions.step ?? '?'}` },
    ];
  }
  if (isNoBoost(boost)) return [{ text: 'no bass boost', value: boost.name }];
  return [{ text: 'bass boost ' }, number, { text: atHz(boost) }];
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

function atHz({ conditions }: Characteristic): string {
  return conditions.hz === undefined ? '' : ` at ${formatHz(conditions.hz)}`;
}

function lowEndClause(output: ProfileOutput): SentencePart[] {
  const corner = headline(output, 'lower-corner');
  if (corner?.bound !== 'exact' || corner.value < wordOfBassHz) return [];
  return [{ text: 'bass ends at ' }, { text: formatQuantity(corner), value: corner.name }];
}

function rearClause(output: ProfileOutput, unit: UnitScale): SentencePart[] {
  const rears = unit.channels.filter((channel) => channel === 'RL' || channel === 'RR');
  if (rears.length === 0) return [{ text: 'the unit has no rear outputs' }];
  const level = headline(output, 'rear-to-front');
  const muted = rears.filter((channel) => output.mutedChannels.includes(channel));
  if (muted.length === rears.length) return [mayLink('rear channels silent', level)];
  if (muted.length > 0) {
    return [
      mayLink(
        `${muted[0] === 'RL' ? 'rear left' : 'rear right'} silent, the other rear channel plays`,
        level,
      ),
    ];
  }
  if (!level) return [{ text: 'rear channels not measured' }];
  if (Math.abs(level.value) <= Math.max(level.expandedUncertainty, equalWithinDb)) {
    return [{ text: 'rear channels play, ' }, { text: 'as loud as the front', value: level.name }];
  }
  const size = formatQuantity({ ...level, value: Math.abs(level.value), expandedUncertainty: 0 });
  return [
    { text: 'rear channels play, ' },
    { text: `${size} ${level.value < 0 ? 'below' : 'above'} front`, value: level.name },
  ];
}

/** Levels nearer than this are called equally loud, dB: common practice, no source. */
const equalWithinDb = 0.5;

function mayLink(text: string, level: Characteristic | undefined): SentencePart {
  return level ? { text, value: level.name } : { text };
}
