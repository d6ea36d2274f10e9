/** The arithmetic of a plan on speakers: what they load the amplifier with, and how loud they are at the ear. */
import type { Texts } from '../language.ts';

export const speakerTexts: Texts = {
  'a front speaker': 'un altavoz delantero',
  'a rear speaker': 'un altavoz trasero',
  'the subwoofer': 'el subwoofer',
  'rated impedance of {speaker}': 'impedancia nominal: {speaker}',
  'Power of {speaker}': 'Potencia: {speaker}',
  'Rated impedance of the speakers together': 'Impedancia nominal de los altavoces juntos',
  'rated impedance of the speakers together': 'impedancia nominal de los altavoces juntos',
  'In series impedances add, in parallel their inverses do. Rated values; the true ones vary with frequency.':
    'En serie se suman las impedancias; en paralelo, sus inversas. Valores nominales; los reales varían con la frecuencia.',
  'Lowest impedance the speakers may have at any frequency':
    'Impedancia más baja que los altavoces pueden tener a cualquier frecuencia',
  'A speaker’s impedance may fall to 0.8 of its rated value (IEC 60268-5, 16.1, as transcribed); amplifiers that state a least rated load allow for it.':
    'La impedancia de un altavoz puede bajar a 0.8 de su valor nominal (IEC 60268-5, 16.1, según transcripción); los amplificadores que indican una carga nominal mínima lo tienen en cuenta.',
  'Rated impedance over the least the amplifier may drive':
    'Impedancia nominal frente a la mínima que admite el amplificador',
  'least rated load of the amplifier': 'carga nominal mínima del amplificador',
  'Below 1 the amplifier is overloaded: it may shut down, overheat or fail.':
    'Por debajo de 1 el amplificador está sobrecargado: puede apagarse, recalentarse o averiarse.',
  'Power into the speakers together': 'Potencia en los altavoces juntos',
  'power into the speakers together': 'potencia en los altavoces juntos',
  'rated power of the channel': 'potencia nominal del canal',
  'load it is rated into': 'carga a la que se refiere',
  'By the same volts into another load. An amplifier whose supply gives way makes less into a lower one; what its maker states for the load comes first.':
    'Con los mismos voltios en otra carga. Un amplificador cuya alimentación cede da menos en una más baja; lo que su fabricante indique para la carga va primero.',
  'its share, by ohms in series, by the inverse of ohms in parallel':
    'su parte, por ohmios en serie, por la inversa de los ohmios en paralelo',
  'By rated impedances; compare it with the rated power of the speaker.':
    'Por impedancias nominales; compárela con la potencia nominal del altavoz.',
  'A speaker’s impedance is below what the amplifier may drive: do not connect it to this amplifier.':
    'La impedancia de un altavoz es menor que la que admite el amplificador: no lo conecte a este amplificador.',
  // At the ear.
  'sensitivity at 1 W, 1 m': 'sensibilidad a 1 W, 1 m',
  'Sound pressure level of one speaker at the ear': 'Nivel de presión sonora de un altavoz en el oído',
  'mean power of the speaker, over 1 W': 'potencia media del altavoz, sobre 1 W',
  'distance to the ear, over 1 m': 'distancia al oído, sobre 1 m',
  'Re 20 µPa, in the free field: from a small source, without reflections or a windscreen, at frequencies the sensitivity holds for. A fairing may add some decibels. Speakers give a little less at full power as their coils get hot.':
    'Re 20 µPa, en campo libre: de una fuente pequeña, sin reflexiones ni parabrisas, a frecuencias para las que vale la sensibilidad. Un carenado puede añadir algunos decibelios. Los altavoces dan un poco menos a plena potencia al calentarse sus bobinas.',
  'level of one speaker': 'nivel de un altavoz',
  'Level of all speakers, each playing its own signal':
    'Nivel de todos los altavoces, cada uno con su propia señal',
  'Powers add where the signals have nothing to do with each other, as most of the treble does at the ear.':
    'Se suman las potencias cuando las señales no tienen nada que ver entre sí, como ocurre con la mayor parte de los agudos en el oído.',
  'Level of all speakers, all playing the same in step':
    'Nivel de todos los altavoces, todos con lo mismo y a la vez',
  'Pressures add where all speakers play the same and their sound arrives in step, as bass does.':
    'Se suman las presiones cuando todos los altavoces reproducen lo mismo y su sonido llega a la vez, como en los graves.',
  'Sensitivity at 1 W, 1 m': 'Sensibilidad a 1 W, 1 m',
  'sensitivity at 2.83 V, 1 m': 'sensibilidad a 2.83 V, 1 m',
  'rated impedance': 'impedancia nominal',
  '2.83 V is 1 W into 8 Ω; into a lower impedance the same volts are more watts.':
    '2.83 V son 1 W en 8 Ω; en una impedancia más baja los mismos voltios son más vatios.',
  'Longest time a day at this level': 'Tiempo máximo al día a este nivel',
  'sound pressure level': 'nivel de presión sonora',
  'NIOSH 98-126: eight hours at 85 dB(A), half as long for every 3 dB more. The level here is not A-weighted, which errs to the safe side for bass. Wind and engine come on top; this is a limit for workers, with risk left below it.':
    'NIOSH 98-126: ocho horas a 85 dB(A), la mitad por cada 3 dB más. El nivel aquí no lleva ponderación A, lo que en graves queda del lado seguro. El viento y el motor se añaden; es un límite para trabajadores, y por debajo de él queda riesgo.',
};
