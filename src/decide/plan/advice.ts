/**
 * What follows from a plan without arithmetic, in words: for the command as they are; a page is sent them as data, so
 * that they are no part of its scripts.
 */
import { phrase } from '../../words/index.ts';

export type AdviceId =
  | 'noRear'
  | 'silentRear'
  | 'feedRear'
  | 'lowImpedance'
  | 'tooHot'
  | 'noBladeFuse'
  | 'noWire'
  | 'groundAndCare'
  | 'carryUnamplified'
  | 'carryNotKept'
  | 'carryOver';

export type Advice = Readonly<Record<AdviceId, string>>;

/** Every piece of advice. */
export function adviceTexts(): Advice {
  return {
    noRear: phrase('The unit has no rear outputs.'),
    silentRear: phrase('The rear outputs are silent.'),
    feedRear: phrase(
      'Feed the amplifier’s rear inputs from the front outputs; where one input is to get both sides, sum them as below, never by joining two outputs.',
    ),
    lowImpedance: phrase(
      'A speaker’s impedance is below what the amplifier may drive: do not connect it to this amplifier.',
    ),
    tooHot: phrase<string>(
      'Around a wire for {insulation} °C it may not be {around} °C: take another way, or have a workshop choose a wire that stands the heat.',
    ),
    noBladeFuse: phrase<string>(
      'Blade fuses end at {amperes} A. A feed for more belongs on a bolted fuse and into the hands of a licensed workshop, or is to be split into feeds with fuses of their own.',
    ),
    noWire: phrase<string>(
      'No wire of the table carries {amperes} A over {metres} m with a loss of at most {percent} %: shorten it, or split it into feeds with fuses of their own.',
    ),
    groundAndCare: phrase(
      'Ground the amplifier at the battery or where the machine’s maker says, with a wire as thick as the feed. Have work on the supply done or checked by a licensed workshop; local codes come first.',
    ),
    carryUnamplified: phrase(
      'Do not carry the old code over: it is an unamplified profile’s, made for speakers straight off the old unit.',
    ),
    carryNotKept: phrase(
      'Do not carry the old code over: it is made for the factory amplifier, and that does not stay.',
    ),
    carryOver: phrase('Carry the old code over: the factory amplifier it is made for stays.'),
  };
}
