/** The arithmetic of a plan on the amplifier’s current, its fuse and its wire. */
import type { Texts } from '../language.ts';

export const supplyTexts: Texts = {
  'rated power of all channels': 'potencia nominal de todos los canales',
  'supply at the amplifier': 'alimentación en el amplificador',
  'Current at a full tone on all channels': 'Corriente con un tono pleno en todos los canales',
  'usual efficiency of class {letter} at full power':
    'rendimiento usual de la clase {letter} a plena potencia',
  'A test tone draws this, music only for moments. The lower the supply, the more current.':
    'Un tono de prueba consume esto; la música, solo por momentos. Cuanto más baja la alimentación, más corriente.',
  'Mean current at music': 'Corriente media con música',
  'usual efficiency of class {letter} at one-eighth of its power':
    'rendimiento usual de la clase {letter} a un octavo de su potencia',
  'One-eighth of rated power stands for music (16 CFR 432.3(c)); dense music at full volume draws more.':
    'Un octavo de la potencia nominal representa la música (16 CFR 432.3(c)); la música densa a todo volumen consume más.',
  'current of the machine itself': 'corriente de la propia moto',
  'mean current of the amplifiers': 'corriente media de los amplificadores',
  'current of the generator': 'corriente del generador',
  'Charging current left over while riding': 'Corriente de carga que sobra en marcha',
  'Below 0 A the battery drains while riding. At idle the generator delivers far less.':
    'Por debajo de 0 A la batería se descarga en marcha. Al ralentí el generador da mucho menos.',
  'Longest time with the engine off': 'Tiempo máximo con el motor parado',
  'share of the battery that may be used': 'parte de la batería que se puede usar',
  'capacity of the battery': 'capacidad de la batería',
  'With the ignition on as while riding. A battery that is old or cold holds less than is printed on it.':
    'Con el encendido puesto como en marcha. Una batería vieja o fría guarda menos de lo que lleva impreso.',
  'Ground the amplifier at the battery or where the machine’s maker says, with a wire as thick as the feed. Have work on the supply done or checked by a licensed workshop; local codes come first.':
    'Ponga la masa del amplificador en la batería o donde diga el fabricante de la moto, con un cable tan grueso como el de alimentación. Haga que un taller autorizado realice o revise el trabajo en la alimentación; las normas locales van primero.',
  // The fuse.
  'Around a wire for {insulation} °C it may not be {around} °C: take another way, or have a workshop choose a wire that stands the heat.':
    'Alrededor de un cable para {insulation} °C no puede haber {around} °C: tome otro camino, o haga que un taller elija un cable que aguante el calor.',
  'Blade fuses end at {amperes} A. A feed for more belongs on a bolted fuse and into the hands of a licensed workshop, or is to be split into feeds with fuses of their own.':
    'Los fusibles de cuchilla terminan en {amperes} A. Una alimentación para más pide un fusible atornillado y las manos de un taller autorizado, o se reparte en alimentaciones con su propio fusible.',
  'Fuse of the feed': 'Fusible de la alimentación',
  'the next blade fuse at or above I_least': 'el primer fusible de cuchilla igual o mayor que I_least',
  'least rating': 'valor mínimo',
  'Blade fuses by ISO 8820-3, as transcribed. It guards the wire, stands close to the battery, and is never larger than what the wire carries. What the amplifier’s maker asks for comes first; where it is more, the wire must carry that.':
    'Fusibles de cuchilla según ISO 8820-3, según transcripción. Protege el cable, va cerca de la batería y nunca es mayor que lo que soporta el cable. Lo que pida el fabricante del amplificador va primero; si es más, el cable debe soportarlo.',
  'No wire of the table carries {amperes} A over {metres} m with a loss of at most {percent} %: shorten it, or split it into feeds with fuses of their own.':
    'Ningún cable de la tabla lleva {amperes} A a lo largo de {metres} m con una pérdida máxima del {percent} %: acórtelo, o repártalo en alimentaciones con su propio fusible.',
  'Least rating of the fuse': 'Valor mínimo del fusible',
  'current without end': 'corriente permanente',
  'A fuse that carries its full rating for long ages and opens: a quarter more, common practice, no source.':
    'Un fusible que lleva mucho tiempo su valor pleno envejece y se abre: un cuarto más, práctica común, sin fuente.',
  'Gauge of the wire, feed and ground alike': 'Calibre del cable, tanto de alimentación como de masa',
  'the thinnest wire with I_wire ≥ I_fuse and e ≤ e_max':
    'el cable más delgado con I_wire ≥ I_fuse y e ≤ e_max',
  fuse: 'fusible',
  'most of the supply that may be lost': 'parte máxima de la alimentación que se puede perder',
  'Thicker is always allowed. Copper, with insulation for the place it runs through; protect it where it may chafe.':
    'Más grueso siempre vale. De cobre, con aislamiento para el lugar por donde pasa; protéjalo donde pueda rozar.',
  // The wire.
  'gauge of the wire': 'calibre del cable',
  'Diameter of the conductor': 'Diámetro del conductor',
  'ASTM B258. A stranded wire has as much copper and is a little thicker.':
    'ASTM B258. Un cable trenzado tiene el mismo cobre y es un poco más grueso.',
  'Cross-section of the conductor': 'Sección del conductor',
  diameter: 'diámetro',
  'Of pure copper. Copper-clad aluminium has some 1.6 times the resistance and is not reckoned with.':
    'De cobre puro. El aluminio recubierto de cobre tiene unas 1.6 veces la resistencia y no se tiene en cuenta.',
  'Resistance of a kilometre of the wire': 'Resistencia de un kilómetro de cable',
  'cross-section': 'sección',
  'temperature of the conductor': 'temperatura del conductor',
  'Annealed copper: 1/58 Ω·mm²/m at 20 °C, 0.00393 more for every kelvin (IEC 60028, as transcribed). Stranded wire has some 2 % more.':
    'Cobre recocido: 1/58 Ω·mm²/m a 20 °C, 0.00393 más por cada kelvin (IEC 60028, según transcripción). El cable trenzado tiene cerca de un 2 % más.',
  'Voltage lost in the wire, there and back': 'Tensión perdida en el cable, ida y vuelta',
  current: 'corriente',
  'resistance of a kilometre': 'resistencia de un kilómetro',
  'length one way': 'longitud de ida',
  'The return is reckoned as a wire of the same gauge and length. Grounds: clean bare metal or, better, the battery’s negative terminal; unit and amplifier to one point. A frame of steel or painted joints lose more.':
    'La vuelta se cuenta como un cable del mismo calibre y longitud. Masas: metal limpio y desnudo o, mejor, el borne negativo de la batería; unidad y amplificador a un mismo punto. Un bastidor de acero o uniones pintadas pierden más.',
  'Share of the supply lost': 'Parte de la alimentación que se pierde',
  'voltage lost': 'tensión perdida',
  supply: 'alimentación',
  'What is lost in the wire is missing at the amplifier, when it draws most.':
    'Lo que se pierde en el cable le falta al amplificador, justo cuando más consume.',
  'What the wire may carry by the table': 'Lo que el cable puede llevar según la tabla',
  'NEC 240.4(D) and table 310.16, 60 °C': 'NEC 240.4(D) y tabla 310.16, 60 °C',
  'NFPA 70 (NEC) 240.4(D) for AWG 18 to 10, table 310.16 for thicker wire, as transcribed. It is made for buildings; no table is made for motorcycles, so that taking this one is common practice. What the wire’s maker states, and local codes, come first.':
    'NFPA 70 (NEC) 240.4(D) para AWG 18 a 10, tabla 310.16 para cable más grueso, según transcripción. Está hecha para edificios; no hay tabla hecha para motocicletas, y usar esta es práctica común. Lo que indique el fabricante del cable y las normas locales van primero.',
  'What the wire may carry where it runs': 'Lo que el cable puede llevar por donde pasa',
  'by the table': 'según la tabla',
  'temperature around the wire': 'temperatura alrededor del cable',
  'The table holds for 30 °C; heat goes with the square of the current, so that less room up to 60 °C leaves less current (NEC 310.15, from memory). Near an engine it is hot: keep away from it.':
    'La tabla vale para 30 °C; el calor va con el cuadrado de la corriente, de modo que menos margen hasta 60 °C deja menos corriente (NEC 310.15, de memoria). Cerca de un motor hace calor: manténgalo lejos de él.',
};
