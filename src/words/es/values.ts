/** What a profile puts out: labels of values, the sentence of an answer, where its uncertainty is from. */
import type { Texts } from '../language.ts';

export const valueTexts: Texts = {
  'Clean output': 'Salida limpia',
  'Highest clean step': 'Paso limpio más alto',
  'Highest step clean at its loudest frequency': 'Paso más alto limpio en su frecuencia más fuerte',
  'Level falls short of the scale from': 'El nivel queda por debajo de la escala desde',
  'Size of a volume step': 'Tamaño de un paso de volumen',
  'Bass boost': 'Realce de graves',
  'Bass boost is at': 'El realce de graves está en',
  'Bass boost is this wide': 'Anchura del realce de graves',
  'Bass ends at (−3 dB)': 'Los graves terminan en (−3 dB)',
  'Bass slope below that': 'Pendiente de graves por debajo',
  'Treble ends at (−3 dB)': 'Los agudos terminan en (−3 dB)',
  'Treble slope above that': 'Pendiente de agudos por encima',
  'At 10 kHz relative to 1 kHz': 'En 10 kHz respecto a 1 kHz',
  'Ripple, 315 Hz to 5 kHz': 'Ondulación, de 315 Hz a 5 kHz',
  'Rear relative to front': 'Traseros respecto a delanteros',
  'Front right relative to front left': 'Delantero derecho respecto al izquierdo',
  'Resistance of the output': 'Resistencia de la salida',
  'Noise with the volume down': 'Ruido con el volumen a cero',
  Keep: 'Conservar',
  'Keep and correct': 'Conservar y corregir',
  Reflash: 'Reprogramar',
  Replace: 'Cambiar la unidad',
  'Measure first': 'Medir antes',
  fits: 'sirve',
  'can be corrected': 'se puede corregir',
  'does not fit': 'no sirve',
  'too close to call': 'en el límite',
  'not known': 'no se sabe',
  Level: 'Nivel',
  Bass: 'Graves',
  'Low end': 'Extremo grave',
  Rear: 'Traseros',
  System: 'Sistema',
  Factory: 'De fábrica',
  'Dealer update': 'Actualización del concesionario',
  'Third party': 'De terceros',
  'Factory amplifier behind the unit': 'Amplificador de fábrica tras la unidad',
  'Speakers straight on the unit': 'Altavoces directos a la unidad',
  amplifier: 'amplificador',
  speakers: 'altavoces',
  'front left': 'delantero izquierdo',
  'front right': 'delantero derecho',
  'rear left': 'trasero izquierdo',
  'rear right': 'trasero derecho',
  'step {step}': 'paso {step}',
  'step\u00a0{step}': 'paso\u00a0{step}',
  'at most {value}': 'como mucho {value}',
  'at least {value}': 'al menos {value}',
  '{load}\u00a0Ω per channel, {supply}\u00a0V supply, test signal {signal}\u00a0dBFS':
    '{load}\u00a0Ω por canal, alimentación de {supply}\u00a0V, señal de prueba {signal}\u00a0dBFS',
  'Not measured yet: nobody has had this profile on a bench.':
    'Sin medir todavía: nadie ha tenido este perfil en un banco de medida.',
  'How far it plays clean is not known': 'No se sabe hasta dónde suena limpio',
  'Clean at every step measured, up to <step>step {step} of {last}</step>':
    'Limpio en todos los pasos medidos, hasta el <step>paso {step} de {last}</step>',
  'Clean up to the last step, <step>{step} of {last}</step>':
    'Limpio hasta el último paso, <step>{step} de {last}</step>',
  'Clean up to <step>step {step} of {last}</step>': 'Limpio hasta el <step>paso {step} de {last}</step>',
  'bass boost not known': 'realce de graves desconocido',
  'bass boost <boost>{most}</boost> at {hz} at step {step}, but <boost>none</boost> at step {other}':
    'realce de graves de <boost>{most}</boost> en {hz} en el paso {step}, pero <boost>ninguno</boost> en el paso {other}',
  'bass boost <boost>{most}</boost> at {hz} at step {step}, but <boost>{least}</boost> at step {other}':
    'realce de graves de <boost>{most}</boost> en {hz} en el paso {step}, pero de <boost>{least}</boost> en el paso {other}',
  '<boost>no bass boost</boost>': '<boost>sin realce de graves</boost>',
  'bass boost <boost>{boost}</boost>': 'realce de graves de <boost>{boost}</boost>',
  'bass boost <boost>{boost}</boost> at {hz}': 'realce de graves de <boost>{boost}</boost> en {hz}',
  'bass ends at <corner>{hz}</corner>': 'los graves terminan en <corner>{hz}</corner>',
  'the unit has no rear outputs': 'la unidad no tiene salidas traseras',
  'rear channels silent': 'canales traseros en silencio',
  'rear left silent, the other rear channel plays': 'trasero izquierdo en silencio, el otro trasero suena',
  'rear right silent, the other rear channel plays': 'trasero derecho en silencio, el otro trasero suena',
  'rear channels not measured': 'canales traseros sin medir',
  'rear channels play, <level>as loud as the front</level>':
    'los canales traseros suenan <level>tan fuerte como los delanteros</level>',
  'rear channels play, <level>{size} below front</level>':
    'los canales traseros suenan, <level>{size} por debajo de los delanteros</level>',
  'rear channels play, <level>{size} above front</level>':
    'los canales traseros suenan, <level>{size} por encima de los delanteros</level>',
  'The bass boost stays the same at every step measured.':
    'El realce de graves es el mismo en todos los pasos medidos.',
  'The bass boost fades by degrees with the volume.':
    'El realce de graves disminuye poco a poco con el volumen.',
  'The bass boost is switched between two steps: it is there in full, or not at all.':
    'El realce de graves se conmuta entre dos pasos: está entero o no está.',
  'The bass boost is not the same at all steps; two steps do not tell how it goes between them.':
    'El realce de graves no es el mismo en todos los pasos; dos pasos no dicen cómo va entre ellos.',
  'from {from} to {to}, {size}': 'de {from} a {to}, {size}',
  'One step of the volume raises the level, {scale}.': 'Un paso de volumen sube el nivel: {scale}.',
  'Session {session} was taken at {level}\u00a0dBFS; its levels are brought to {main}\u00a0dBFS, in the clean region only.':
    'La sesión {session} se tomó a {level}\u00a0dBFS; sus niveles se llevan a {main}\u00a0dBFS, solo en la zona limpia.',
  'largest E_n {normalised}, χ² {chiSquare} for {freedom}, probability {probability}, Birge ratio {birge}':
    'E_n máximo {normalised}, χ² {chiSquare} con {freedom}, probabilidad {probability}, razón de Birge {birge}',
  'Sessions {sessions} read the level at step {step} and agree ({figures}).':
    'Las sesiones {sessions} leyeron el nivel en el paso {step} y concuerdan ({figures}).',
  '{agreeing} agree, {apart} stand apart': {
    one: '{agreeing} concuerdan, {apart} se aparta',
    other: '{agreeing} concuerdan, {apart} se apartan',
  },
  'no two of them agree': 'no hay dos que concuerden',
  'Sessions {sessions} read the level at step {step} and do not agree ({figures}): {subset}. All are kept, with a deviation between benches of {deviation}\u00a0V in the uncertainty.':
    'Las sesiones {sessions} leyeron el nivel en el paso {step} y no concuerdan ({figures}): {subset}. Se conservan todas, con una desviación entre bancos de {deviation}\u00a0V en la incertidumbre.',
  'signal level': 'nivel de la señal',
  'voltmeter gain': 'ganancia del voltímetro',
  load: 'carga',
  counts: 'cuentas',
  resolution: 'resolución',
  repeats: 'repeticiones',
  interpolation: 'interpolación',
  ripple: 'ondulación',
  'between benches': 'entre bancos',
  'level of the pass band': 'nivel de la banda de paso',
  'spacing of the frequencies played': 'separación de las frecuencias emitidas',
  'departure from a straight slope': 'desvío de una pendiente recta',
};
