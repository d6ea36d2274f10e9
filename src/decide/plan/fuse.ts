/** The fuse and the wire of a feed, chosen together: the wire carries what its fuse lets through. */
import { quantity } from '../../measure/index.ts';
import { fillSlots, phrase } from '../../words/index.ts';
import type { Advice } from './advice.ts';
import { type ArithmeticLine, carried, given, lookedUp, type Refusal, workedOut } from './line.ts';
import { tableCelsius, voltageDrop, wireCarries, wireResistance, wireTable } from './wire.ts';

/** Ratings of blade fuses, amperes (ISO 8820-3, as transcribed). */
export const bladeAmperes: readonly number[] = [2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40];

/** A feed from the battery to an amplifier. */
export interface Feed {
  /** The line of the current it carries without end. */
  readonly current: ArithmeticLine;
  /** One way. */
  readonly lengthM: number;
  readonly supplyVolts: number;
  /** Most of the supply that may be lost, per cent: 3 is common practice, no source. */
  readonly mostDropPercent: number;
  /** Of the conductor, for its resistance. */
  readonly conductorCelsius: number;
  /** Around the wire, for what it may carry. */
  readonly aroundCelsius: number;
  /** What to do where there is no such fuse or wire. */
  readonly advice: Pick<Advice, 'tooHot' | 'noBladeFuse' | 'noWire'>;
}

/** The fuse, then the thinnest wire that carries it and loses no more than allowed; refused where there is none. */
export function fuseAndWire(feed: Feed): readonly ArithmeticLine[] | Refusal {
  const { current, mostDropPercent, aroundCelsius, advice } = feed;
  if (aroundCelsius >= tableCelsius.insulation) {
    return {
      refused: fillSlots(advice.tooHot, { insulation: tableCelsius.insulation, around: aroundCelsius }),
    };
  }
  const least = leastFuse(current);
  const amperes = nextBlade(least.result.value + least.result.expandedUncertainty);
  if (amperes === undefined) {
    return {
      refused: fillSlots(advice.noBladeFuse, { amperes: bladeAmperes.at(-1) ?? 0 }),
    };
  }
  const fuse = lookedUp(
    {
      id: 'fuse',
      symbol: 'I_fuse',
      formula: phrase('the next blade fuse at or above I_least'),
      isInWords: true,
      given: [carried(phrase('least rating'), least)],
      cautions: ['fuse', 'disconnect-battery'],
      commonPractice: true,
    },
    quantity(amperes, 'A', []),
  );
  for (const { gauge, amperes: byTable } of wireTable) {
    const carries = wireCarries(gauge, byTable, aroundCelsius);
    const resistance = wireResistance(gauge, feed.conductorCelsius);
    const drop = dropOf(feed, resistance);
    const most = carries.at(-1)?.result.value ?? 0;
    const share = drop[1].result;
    if (most < amperes || share.value + share.expandedUncertainty > mostDropPercent) continue;
    return [least, fuse, gaugeLine(gauge, fuse, mostDropPercent), ...carries, ...resistance, ...drop];
  }
  return {
    refused: fillSlots(advice.noWire, { amperes, metres: feed.lengthM, percent: mostDropPercent }),
  };
}

function leastFuse(current: ArithmeticLine): ArithmeticLine {
  return workedOut({
    id: 'least-fuse',
    symbol: 'I_least',
    formula: `1.25·${current.symbol}`,
    given: [carried(phrase('current without end'), current)],
    unit: 'A',
    bound: 'at-least',
    cautions: ['fuse'],
    commonPractice: true,
  });
}

/** The next size; a current that meets one but for the last digit of the arithmetic takes that one. */
function nextBlade(amperes: number): number | undefined {
  return bladeAmperes.find((size) => size >= amperes * (1 - 1e-12));
}

function dropOf(feed: Feed, resistance: readonly ArithmeticLine[]): ReturnType<typeof voltageDrop> {
  const perKilometre = resistance.at(-1);
  if (!perKilometre) throw new Error('a wire without resistance');
  return voltageDrop(feed.current, feed.lengthM, feed.supplyVolts, perKilometre);
}

function gaugeLine(gauge: number, fuse: ArithmeticLine, mostDropPercent: number): ArithmeticLine {
  return lookedUp(
    {
      id: 'wire-gauge',
      symbol: 'n',
      formula: phrase('the thinnest wire with I_wire ≥ I_fuse and e ≤ e_max'),
      isInWords: true,
      given: [
        carried(phrase('fuse'), fuse),
        given('e_max', phrase('most of the supply that may be lost'), mostDropPercent, '%'),
      ],
      cautions: ['fuse', 'disconnect-battery'],
      commonPractice: true,
    },
    quantity(gauge, 'AWG', [], 'exact'),
  );
}
