/** The arithmetic of a plan on the low end and the equaliser, and the old code in another unit. */
import type { Texts } from '../language.ts';

export const bassTexts: Texts = {
  'The response at step {step} was read from {first} to {last} Hz: read it at {hz} Hz too.':
    'La respuesta en el paso {step} se leyó de {first} a {last} Hz: léala también a {hz} Hz.',
  'Level at the lowest frequency wanted, relative to 1 kHz':
    'Nivel en la frecuencia más baja deseada, respecto a 1 kHz',
  'From a response at a clean step; between two frequencies that were read, along a straight line over their logarithms.':
    'De una respuesta en un paso limpio; entre dos frecuencias leídas, en línea recta sobre sus logaritmos.',
  'level read there, at step {step}': 'nivel leído ahí, en el paso {step}',
  'lowest frequency wanted': 'frecuencia más baja deseada',
  'next one read below': 'la siguiente leída por debajo',
  'next one read above': 'la siguiente leída por encima',
  'level read below, at step {step}': 'nivel leído por debajo, en el paso {step}',
  'level read above, at step {step}': 'nivel leído por encima, en el paso {step}',
  'Power at the boost’s frequency against that at 1 kHz':
    'Potencia en la frecuencia del realce frente a la de 1 kHz',
  'bass boost': 'realce de graves',
  'For one voltage, into one impedance. Below its resonance a small speaker moves as far as its suspension allows long before it gets hot, so that its rated power says nothing there.':
    'Para una misma tensión y una misma impedancia. Por debajo de su resonancia un altavoz pequeño llega al tope de su suspensión mucho antes de calentarse, así que su potencia nominal no dice nada ahí.',
  'Slope of the protective high-pass': 'Pendiente del paso alto protector',
  'order of the filter': 'orden del filtro',
  'A Butterworth filter of order n falls this fast an octave below its corner.':
    'Un filtro Butterworth de orden n cae así de rápido una octava por debajo de su frecuencia de corte.',
  'What is to be taken out at the boost’s frequency': 'Lo que hay que quitar en la frecuencia del realce',
  'its expanded uncertainty': 'su incertidumbre expandida',
  'most boost the speaker is to be given': 'realce máximo que debe recibir el altavoz',
  'The uncertainty is added, so that the filter is enough.':
    'Se suma la incertidumbre, de modo que el filtro basta.',
  'Corner of a high-pass that protects the speaker':
    'Frecuencia de corte de un paso alto que protege el altavoz',
  'lowest frequency the speaker is made for': 'frecuencia más baja para la que está hecho el altavoz',
  'frequency of the boost': 'frecuencia del realce',
  'to be taken out': 'lo que hay que quitar',
  'Butterworth, half power at its corner. The maker’s advice for the speaker comes first where there is any.':
    'Butterworth, mitad de potencia en su frecuencia de corte. Si el fabricante del altavoz aconseja algo, eso va primero.',
  // The equaliser.
  'The boost changes with the volume: a setting that is right at one step is wrong at another. Another profile would have to take it out.':
    'El realce cambia con el volumen: un ajuste correcto en un paso es falso en otro. Tendría que quitarlo otro perfil.',
  'Whether the boost stays the same with the volume is not known: it needs the response at a second step.':
    'No se sabe si el realce se mantiene con el volumen: hace falta la respuesta en un segundo paso.',
  'No response was read at a clean step: read one, at 1 kHz too, at a step that plays clean.':
    'No se leyó ninguna respuesta en un paso limpio: lea una, también a 1 kHz, en un paso que suene limpio.',
  'Too few frequencies were read between {from} and {to} Hz ({count}): read {least} at least, better every third octave.':
    'Se leyeron muy pocas frecuencias entre {from} y {to} Hz ({count}): lea {least} por lo menos, mejor cada tercio de octava.',
  frequencies: 'frecuencias',
  'lowest of them': 'la más baja de ellas',
  'highest of them': 'la más alta de ellas',
  'Over the frequencies read within the profile’s own pass band, the overall level being free.':
    'Sobre las frecuencias leídas dentro de la banda propia del perfil, con el nivel general libre.',
  'the root of the mean of the squares of what is left at the n frequencies':
    'la raíz de la media de los cuadrados de lo que queda en las n frecuencias',
  'the largest of what is left at the n frequencies': 'lo mayor de lo que queda en las n frecuencias',
  'the highest level of all filters together, or 0': 'el nivel más alto de todos los filtros juntos, o 0',
  'Departure from the target before': 'Desviación del objetivo antes',
  'Departure from the target that is left': 'Desviación del objetivo que queda',
  'Largest departure that is left': 'Mayor desviación que queda',
  'Headroom the filters take': 'Margen que ocupan los filtros',
  'Turn the equaliser’s input down by this much, or the filters’ boosts may clip it at full level.':
    'Baje la entrada del ecualizador en esta medida, o los realces de los filtros pueden hacerlo recortar a nivel pleno.',
  // The old code in another unit.
  'Do not carry the old code over: it is an unamplified profile’s, made for speakers straight off the old unit.':
    'No pase el código antiguo: es de un perfil sin amplificador, hecho para altavoces conectados directamente a la unidad antigua.',
  'Do not carry the old code over: it is made for the factory amplifier, and that does not stay.':
    'No pase el código antiguo: está hecho para el amplificador de fábrica, y ese no se queda.',
  'Carry the old code over: the factory amplifier it is made for stays.':
    'Pase el código antiguo: el amplificador de fábrica para el que está hecho se queda.',
};
