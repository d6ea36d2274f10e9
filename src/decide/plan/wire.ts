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
    title: phrase('Diameter of the conductor'),
    symbol: 'd',
    formula: '0.127·92^((36 − n)/39)',
    given: [gaugeGiven(gauge)],
    unit: 'mm',
    note: phrase('ASTM B258. A stranded wire has as much copper and is a little thicker.'),
  });
}

/** Resistance of a kilometre at a conductor temperature. */
export function wireResistance(gauge: number, conductorCelsius: number): readonly ArithmeticLine[] {
  const diameter = wireDiameter(gauge);
  const area = workedOut({
    id: 'wire-area',
    title: phrase('Cross-section of the conductor'),
    symbol: 'A',
    formula: 'π/4·d^2',
    given: [carried(phrase('diameter'), diameter)],
    unit: 'mm²',
    note: phrase(
      'Of pure copper. Copper-clad aluminium has some 1.6 times the resistance and is not reckoned with.',
    ),
  });
  const resistance = workedOut({
    id: 'wire-resistance',
    title: phrase('Resistance of a kilometre of the wire'),
    symbol: 'R_km',
    formula: '1000/(58·A)·(1 + 0.00393·(T − 20))',
    given: [
      carried(phrase('cross-section'), area),
      given('T', phrase('temperature of the conductor'), conductorCelsius, '°C'),
    ],
    unit: 'Ω/km',
    note: phrase(
      'Annealed copper: 1/58 Ω·mm²/m at 20 °C, 0.00393 more for every kelvin (IEC 60028, as transcribed). Stranded wire has some 2 % more.',
    ),
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
    title: phrase('Voltage lost in the wire, there and back'),
    symbol: 'ΔV',
    formula: `${current.symbol}·R_km·2·l/1000`,
    given: [
      carried(phrase('current'), current),
      carried(phrase('resistance of a kilometre'), resistance),
      given('l', phrase('length one way'), lengthM, 'm'),
    ],
    unit: 'V',
    note: phrase(
      'The return is reckoned as a wire of the same gauge and length. Grounds: clean bare metal or, better, the battery’s negative terminal; unit and amplifier to one point. A frame of steel or painted joints lose more.',
    ),
    cautions: ['disconnect-battery', 'fuse'],
  });
  const share = workedOut({
    id: 'wire-drop-share',
    title: phrase('Share of the supply lost'),
    symbol: 'e',
    formula: '100·ΔV/V',
    given: [carried(phrase('voltage lost'), drop), given('V', phrase('supply'), supplyVolts, 'V')],
    unit: '%',
    note: phrase('What is lost in the wire is missing at the amplifier, when it draws most.'),
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
      title: phrase('What the wire may carry by the table'),
      symbol: 'I_table',
      formula: phrase('NEC 240.4(D) and table 310.16, 60 °C'),
      given: [gaugeGiven(gauge)],
      note: phrase(
        'NFPA 70 (NEC) 240.4(D) for AWG 18 to 10, table 310.16 for thicker wire, as transcribed. It is made for buildings; no table is made for motorcycles, so that taking this one is common practice. What the wire’s maker states, and local codes, come first.',
      ),
      cautions: ['fuse'],
      commonPractice: true,
    },
    quantity(amperes, 'A', []),
  );
  const carries = workedOut({
    id: 'wire-carries',
    title: phrase('What the wire may carry where it runs'),
    symbol: 'I_wire',
    formula: 'I_table·min(1, √((60 − T_a)/30))',
    given: [
      carried(phrase('by the table'), table),
      given('T_a', phrase('temperature around the wire'), aroundCelsius, '°C'),
    ],
    unit: 'A',
    bound: 'at-most',
    note: phrase(
      'The table holds for 30 °C; heat goes with the square of the current, so that less room up to 60 °C leaves less current (NEC 310.15, from memory). Near an engine it is hot: keep away from it.',
    ),
    cautions: ['fuse'],
    commonPractice: true,
  });
  return [table, carries];
}
