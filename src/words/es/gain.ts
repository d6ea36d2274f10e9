/** The arithmetic of a plan on the signal: gain, clipping bass, rear channels, small speakers, equaliser. */
import type { Texts } from '../language.ts';

export const gainTexts: Texts = {
  // Clean volts against the input.
  'The output was silent: there is no level to compare.': 'La salida estaba muda: no hay nivel que comparar.',
  'clean volts of the output': 'voltios limpios de la salida',
  'input, gain fully up': 'entrada, ganancia al máximo',
  'input, gain fully down': 'entrada, ganancia al mínimo',
  'Level above what full power needs': 'Nivel por encima del que pide la plena potencia',
  'Below 0 dB the amplifier does not reach full power even with its gain fully up.':
    'Por debajo de 0 dB el amplificador no alcanza la plena potencia ni con la ganancia al máximo.',
  'Level above what the input takes': 'Nivel por encima del que admite la entrada',
  'Above 0 dB the amplifier clips before the volume is up, even with its gain fully down.':
    'Por encima de 0 dB el amplificador recorta antes de llegar al volumen máximo, incluso con la ganancia al mínimo.',
  'Share of the amplifier’s power that can be reached':
    'Parte de la potencia del amplificador que se alcanza',
  'Power goes with the square of the volts. It is reached with the gain fully up.':
    'La potencia va con el cuadrado de los voltios. Se alcanza con la ganancia al máximo.',
  'Attenuation needed between output and input': 'Atenuación necesaria entre salida y entrada',
  'their expanded uncertainty': 'su incertidumbre expandida',
  'The uncertainty is added, so that this much is enough. Stopping at a lower volume step does the same.':
    'Se suma la incertidumbre, de modo que con esto basta. Quedarse en un paso de volumen más bajo hace lo mismo.',
  // Setting the gain.
  'The clean step was found with a tone of {db} dB of full scale. A louder tone may clip there: take one of at most {db} dB.':
    'El paso limpio se halló con un tono de {db} dB de la escala completa. Un tono más fuerte puede recortar ahí: use uno de {db} dB como máximo.',
  'Volume step to set the gain at': 'Paso de volumen en que se ajusta la ganancia',
  'highest clean step': 'paso limpio más alto',
  'its range': 'su margen',
  'At this step or a lower one the unit itself does not clip, so that what is set is the amplifier’s gain. Tone controls stand at their middle. For a bass tone take the step at which the boosted band is clean.':
    'En este paso o en uno más bajo la unidad misma no recorta, de modo que lo que se ajusta es la ganancia del amplificador. Los controles de tono están en el centro. Para un tono grave tome el paso en que la banda realzada suena limpia.',
  'An overlap of 0 to {most} dB can be set.': 'Se puede fijar un solape de 0 a {most} dB.',
  'overlap allowance': 'solape admitido',
  'Level the test tone must not exceed, of full scale':
    'Nivel que el tono de prueba no debe superar, de la escala completa',
  'With this overlap the amplifier is at full power when the recording is this far below full scale; a louder tone would clip it.':
    'Con este solape el amplificador está a plena potencia cuando la grabación queda así de lejos de la escala completa; un tono más fuerte lo haría recortar.',
  'With an overlap of {overlap} dB a tone of {tone} dB of full scale would clip the amplifier: take one of at most {most} dB.':
    'Con un solape de {overlap} dB, un tono de {tone} dB de la escala completa haría recortar el amplificador: use uno de {most} dB como máximo.',
  'Voltage to set at the amplifier’s output': 'Tensión que se ajusta a la salida del amplificador',
  'volts at rated power': 'voltios a la potencia nominal',
  'level of the test tone, of full scale': 'nivel del tono de prueba, de la escala completa',
  'Read with a true-rms meter that is good to the frequency of the tone, runs on its own battery and touches nothing else; loudspeakers are disconnected. The output may be bridged: neither terminal is ground, so never put the clip of a meter or oscilloscope on the chassis.':
    'Lea con un medidor de verdadero valor eficaz que llegue a la frecuencia del tono, funcione con su propia batería y no toque nada más; los altavoces están desconectados. La salida puede estar en puente: ningún borne es masa, así que nunca ponga la pinza de un medidor u osciloscopio en el chasis.',
  'Volts at the amplifier’s rated power': 'Voltios a la potencia nominal del amplificador',
  'rated power': 'potencia nominal',
  'rated impedance of the load': 'impedancia nominal de la carga',
  'From P = V²/Z for volts rms into the rated impedance.':
    'De P = V²/Z para voltios eficaces sobre la impedancia nominal.',
  // Where the boosted band clips.
  'Where the boosted band clips is not known: it needs a response at one step at least.':
    'No se sabe dónde recorta la banda realzada: hace falta una respuesta en un paso por lo menos.',
  'First step at which the boosted band may clip': 'Primer paso en que la banda realzada puede recortar',
  'highest step at which the boosted band plays clean': 'paso más alto en que la banda realzada suena limpia',
  'The boosted band reaches the ceiling before 1 kHz does. Music seldom holds the band at full level, so that clipping may be heard some steps later.':
    'La banda realzada llega al techo antes que 1 kHz. La música rara vez mantiene esa banda a nivel pleno, así que el recorte puede oírse algunos pasos después.',
  'Loudness given up to keep the boosted band clean':
    'Volumen al que se renuncia para que la banda realzada suene limpia',
  'Against the highest step at which 1 kHz alone plays clean. Where either step is not certain, its range counts by the size of a step.':
    'Frente al paso más alto en que 1 kHz solo suena limpio. Donde uno de los pasos no es seguro, su margen cuenta según el tamaño de un paso.',
  'The level between steps {to} and {from} is not known: read 1 kHz at both.':
    'No se conoce el nivel entre los pasos {to} y {from}: lea 1 kHz en ambos.',
  'volts at step {step}': 'voltios en el paso {step}',
  'steps up or down': 'pasos arriba o abajo',
  'size of these steps': 'tamaño de estos pasos',
  // Rear channels.
  'Gain of the rear channels over the front ones for an even level':
    'Ganancia de los canales traseros sobre los delanteros para un nivel parejo',
  'rear relative to front': 'trasero respecto a delantero',
  'For equal speakers at equal distance. Noise of the rear outputs is raised by as much.':
    'Con altavoces iguales a igual distancia. El ruido de las salidas traseras sube lo mismo.',
  'Feed the amplifier’s rear inputs from the front outputs; where one input is to get both sides, sum them as below, never by joining two outputs.':
    'Alimente las entradas traseras del amplificador desde las salidas delanteras; si una entrada debe recibir ambos lados, súmelos como abajo, nunca uniendo dos salidas.',
  'outputs summed': 'salidas sumadas',
  'resistor from each output': 'resistencia desde cada salida',
  'input fed': 'entrada alimentada',
  'Outputs that are bridged are summed only where both legs of each have their own resistors and the input floats, or behind a converter with an isolated input.':
    'Las salidas en puente solo se suman si las dos ramas de cada una tienen sus propias resistencias y la entrada es flotante, o detrás de un convertidor con entrada aislada.',
  'Level of the sum where all outputs play the same': 'Nivel de la suma si todas las salidas suenan igual',
  'Relative to one output.': 'Respecto a una salida.',
  'Level of the sum where one output plays alone': 'Nivel de la suma si suena una sola salida',
  'Relative to that output: what is on one side only is this much lower.':
    'Respecto a esa salida: lo que está solo en un lado queda así de más bajo.',
  'Lowest load on one output': 'Carga más baja en una salida',
  'Where the other outputs are silent and take its current. An output of a head unit drives far lower loads; some of them look for a speaker and mute without one, and then need a load resistor.':
    'Cuando las otras salidas están mudas y toman su corriente. Una salida de unidad principal alimenta cargas mucho más bajas; algunas buscan un altavoz y enmudecen sin él, y entonces necesitan una resistencia de carga.',
  'Most power in one of the resistors': 'Potencia máxima en una de las resistencias',
  'clean volts of one output': 'voltios limpios de una salida',
  'With the far end at zero. Take a resistor rated for at least twice this: common practice, no source.':
    'Con el otro extremo a cero. Tome una resistencia para el doble por lo menos: práctica común, sin fuente.',
};
