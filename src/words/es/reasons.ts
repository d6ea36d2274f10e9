/** What a plan comes to on a profile, and why. */
import type { Texts } from '../language.ts';

export const reasonTexts: Texts = {
  'Keep this profile: nothing needs to change.': 'Conserve este perfil: no hay que cambiar nada.',
  'Keep this profile; something may have to be put right.':
    'Conserve este perfil; puede que haya que corregir algo.',
  'Keep this profile and put a few things right.': 'Conserve este perfil y corrija algunas cosas.',
  'Keep this profile and put one thing right.': 'Conserve este perfil y corrija una cosa.',
  'This profile does not suit the plan; another one would be needed.':
    'Este perfil no sirve para el plan; haría falta otro.',
  'This profile does not suit the plan, and no other one known for this unit does.':
    'Este perfil no sirve para el plan, y tampoco ningún otro que se conozca para esta unidad.',
  'Not decided yet: more readings are needed.': 'Aún sin decidir: hacen falta más lecturas.',
  'Not decided yet: one more reading would settle it.': 'Aún sin decidir: una lectura más lo aclararía.',
  'It is meant for a factory amplifier behind the unit.':
    'Está pensado para un amplificador de fábrica detrás de la unidad.',
  'It is meant for speakers straight off the unit.':
    'Está pensado para altavoces conectados directamente a la unidad.',
  'It is meant for speakers straight off the unit, never for a factory amplifier.':
    'Está pensado para altavoces conectados directamente a la unidad, nunca para un amplificador de fábrica.',
  'It is meant for a factory amplifier, not for speakers straight off the unit.':
    'Está pensado para un amplificador de fábrica, no para altavoces conectados directamente a la unidad.',
  'It plays clean up to {volts}, within the range: the amplifier’s input takes {least} to {most}.':
    'Suena limpio hasta {volts}, dentro del margen: la entrada del amplificador admite de {least} a {most}.',
  'It plays clean up to {volts}, too near the end of the range to tell: the amplifier’s input takes {least} to {most}.':
    'Suena limpio hasta {volts}, demasiado cerca del límite para saberlo: la entrada del amplificador admite de {least} a {most}.',
  'It plays clean up to {volts}, {db} short: the amplifier’s input takes {least} to {most}.':
    'Suena limpio hasta {volts}, le faltan {db}: la entrada del amplificador admite de {least} a {most}.',
  'It plays clean up to {volts}, {db} over: the amplifier’s input takes {least} to {most}.':
    'Suena limpio hasta {volts}, le sobran {db}: la entrada del amplificador admite de {least} a {most}.',
  'Read the volts at the highest clean step again with a finer meter.':
    'Vuelva a leer los voltios en el paso limpio más alto con un medidor más fino.',
  'Bass boost is {boost}; the plan’s speakers are to get at most {most} dB.':
    'El realce de graves es de {boost}; los altavoces del plan deben recibir {most} dB como máximo.',
  'Bass boost is {boost}, too near the limit to tell; the plan’s speakers are to get at most {most} dB.':
    'El realce de graves es de {boost}, demasiado cerca del límite para saberlo; los altavoces del plan deben recibir {most} dB como máximo.',
  'Bass boost changes with the volume, up to {boost} at step {step}; the plan’s speakers are to get at most {most} dB.':
    'El realce de graves cambia con el volumen, hasta {boost} en el paso {step}; los altavoces del plan deben recibir {most} dB como máximo.',
  'Bass boost changes with the volume, up to {boost} at step {step}, too near the limit to tell; the plan’s speakers are to get at most {most} dB.':
    'El realce de graves cambia con el volumen, hasta {boost} en el paso {step}, demasiado cerca del límite para saberlo; los altavoces del plan deben recibir {most} dB como máximo.',
  'It was measured at one step only: whether an equaliser can take it out needs the response at a second step.':
    'Se midió en un solo paso: para saber si un ecualizador puede quitarlo hace falta la respuesta en un segundo paso.',
  'Read the response at the step of the greatest boost again, with more repeats.':
    'Vuelva a leer la respuesta en el paso de mayor realce, con más repeticiones.',
  'Bass reaches down to {corner}; the plan wants it down to {hz} Hz.':
    'Los graves llegan hasta {corner}; el plan los pide hasta {hz} Hz.',
  'Bass reaches down to {corner}; the plan wants it down to {hz} Hz, too near to tell.':
    'Los graves llegan hasta {corner}; el plan los pide hasta {hz} Hz, demasiado cerca para saberlo.',
  'Read the response around that frequency at closer spacing.':
    'Lea la respuesta alrededor de esa frecuencia a intervalos menores.',
  'The unit has no rear outputs.': 'La unidad no tiene salidas traseras.',
  'The rear outputs are silent.': 'Las salidas traseras están mudas.',
  'The rear outputs play at {level} relative to the front.':
    'Las salidas traseras suenan a {level} respecto a las delanteras.',
  'Read front and rear again at one step.': 'Vuelva a leer delante y detrás en un mismo paso.',
  'Not measured: this {reason}.': 'Sin medir: esto {reason}.',
  'needs readings': 'necesita lecturas',
  // The table plans are decided by where the shop has none of its own.
  'Level short by': 'Al nivel le faltan',
  'Bass ends too early by': 'Los graves acaban antes por',
  'Boost over by': 'Al realce le sobran',
  'Boost with volume': 'Realce con el volumen',
  Equaliser: 'Ecualizador',
  'Rear wanted': 'Traseros deseados',
  'Rear below front by': 'Traseros por debajo de delanteros',
  'Level over by': 'Al nivel le sobran',
  'No equaliser setting takes out a boost that changes.':
    'Ningún ajuste del ecualizador quita un realce que cambia.',
  'The plan has no equaliser to take it out.': 'El plan no tiene ecualizador para quitarlo.',
  'It stays the same with the volume, so the amplifier’s equaliser can take it out.':
    'Se mantiene con el volumen, así que el ecualizador del amplificador puede quitarlo.',
  'Attenuate the feed or stop at a lower step.': 'Atenúe la señal o quédese en un paso más bajo.',
  'Feed the amplifier’s rear inputs from the front outputs.':
    'Alimente las entradas traseras del amplificador desde las salidas delanteras.',
  'Make up for it with the rear gain of the amplifier.':
    'Compénselo con la ganancia trasera del amplificador.',
};
