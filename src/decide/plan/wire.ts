/** Copper wire by gauge: its diameter, resistance, voltage drop, and what it may carry. */
import { quantity } from '../../measure/index.ts';
import { phrase } from '../../words/index.ts';
import { type ArithmeticLine, carried, type Given, given, lookedUp, workedOut } from './line.ts';

/** A gauge as a value: 8 for AWG 8, 0 for 1/0. */
export function gaugeGiven(gauge: number): Given {
  return given('n', phrase('gauge of the wire'), gauge, 'AWG');
}

/** Diameter of the solid conductor: d = 0.127 mm·92^((36−n)/39) (ASTM B258, as transcribed). */
export function wireDiameter(gauge: number): ArithmeticLine {
  return workedOut({
    id: 'wire-diameter',
    symbol: 'd',
    formula: '0.127·92^((36 − n)/39)',
    given: [gaugeGiven(gauge)],
    unit: 'mm',
  });
}

/** Resistance of a kilometre at a conductor temperature. */
export function wireResistance(gauge: number, conductorCelsius: number): readonly ArithmeticLine[] {
  const diameter = wireDiameter(gauge);
  const area = workedOut({
    id: 'wire-area',
    symbol: 'A',
    formula: 'π/4·d^2',
    given: [carried(phrase('diameter'), diameter)],
    unit: 'mm²',
  });
  const resistance = workedOut({
    id: 'wire-resistance',
    symbol: 'R_km',
    formula: '1000/(58·A)·(1 + 0.00393·(T − 20))',
    given: [
      carried(phrase('cross-section'), area),
      given('T', phrase('temperature of the conductor'), conductorCelsius, '°C'),
    ],
    unit: 'Ω/km',
  });
  return [diameter, area, resistance];
}

/** Volts lost in a wire there and back. */
export function voltageDrop(
  current: ArithmeticLine,
  lengthM: number,
  supplyVolts: number,
  resistance: ArithmeticLine,
): readonly [drop: ArithmeticLine, share: ArithmeticLine] {
  const drop = workedOut({
    id: 'wire-drop',
    symbol: 'ΔV',
    formula: `${current.symbol}·R_km·2·l/1000`,
    given: [
      carried(phrase('current'), current),
      carried(phrase('resistance of a kilometre'), resistance),
      given('l', phrase('length one way'), lengthM, 'm'),
    ],
    unit: 'V',
    cautions: ['disconnect-battery', 'fuse'],
  });
  const share = workedOut({
    id: 'wire-drop-share',
    symbol: 'e',
    formula: '100·ΔV/V',
    given: [carried(phrase('voltage lost'), drop), given('V', phrase('supply'), supplyVolts, 'V')],
    unit: '%',
  });
  return [drop, share];
}

/**
 * Amperes a copper wire may be fused for, by gauge, thinnest first: AWG 18 to 10 by NFPA 70 (NEC) 240.4(D), thicker
 * ones by its table 310.16, column of 60 °C insulation (both as transcribed). It is made for buildings: at most three
 * wires together, 30 °C around them.
 */
export const wireTable: readonly { readonly gauge: number; readonly amperes: number }[] = [
  { gauge: 18, amperes: 7 },
  { gauge: 16, amperes: 10 },
  { gauge: 14, amperes: 15 },
  { gauge: 12, amperes: 20 },
  { gauge: 10, amperes: 30 },
  { gauge: 8, amperes: 40 },
  { gauge: 6, amperes: 55 },
  { gauge: 4, amperes: 70 },
  { gauge: 2, amperes: 95 },
];

/** The temperature the table's insulation stands, and that around the wire it is made for, °C. */
export const tableCelsius = { insulation: 60, around: 30 } as const;

/** What a wire of the table carries where it is hot: I·√((60 − T)/(60 − 30)), never more than the table. */
export function wireCarries(
  gauge: number,
  amperes: number,
  aroundCelsius: number,
): readonly ArithmeticLine[] {
  const table = lookedUp(
    {
      id: 'wire-table',
      symbol: 'I_table',
      formula: phrase('NEC 240.4(D) and table 310.16, 60 °C'),
      isInWords: true,
      given: [gaugeGiven(gauge)],
      cautions: ['fuse'],
      commonPractice: true,
    },
    quantity(amperes, 'A', []),
  );
  const carries = workedOut({
    id: 'wire-carries',
    symbol: 'I_wire',
    formula: 'I_table·min(1, √((60 − T_a)/30))',
    given: [
      carried(phrase('by the table'), table),
      given('T_a', phrase('temperature around the wire'), aroundCelsius, '°C'),
    ],
    unit: 'A',
    bound: 'at-most',
    cautions: ['fuse'],
    commonPractice: true,
  });
  return [table, carries];
}
