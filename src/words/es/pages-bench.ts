/** What is not measured, and the sheet for the bench. */
import type { Texts } from '../language.ts';

export const pagesBenchTexts: Texts = {
  '(all)': '(todos)',
  '(with others)': '(con otros)',
  '<link>{unit}</link>: {count}\u00a0profiles. Fitted to {fitment}.': {
    one: '<link>{unit}</link>: {count}\u00a0perfil. Montada en {fitment}.',
    other: '<link>{unit}</link>: {count}\u00a0perfiles. Montada en {fitment}.',
  },
  'A value read in two sessions has been held against another bench or another day. One read once stands alone.':
    'Un valor leído en dos sesiones se ha contrastado con otro banco u otro día. Uno leído una sola vez no tiene con qué compararse.',
  'Bench sheet of {unit}': 'Hoja de banco de {unit}',
  'Bench sheet to fill in': 'Hoja de banco para rellenar',
  'By model year': 'Por año de modelo',
  Characteristic: 'Característica',
  'Frequencies are the exact third octaves (1000 · 10<sup>k/10</sup> Hz), printed by their nominal names; the file has them in full. In brackets: the number of the repeat.':
    'Las frecuencias son los tercios de octava exactos (1000 · 10<sup>k/10</sup> Hz), impresos con su nombre nominal; el archivo las trae completas. Entre paréntesis: el número de la repetición.',
  'How many of the {count}\u00a0profiles are in which state': {
    one: 'El estado del único perfil',
    other: 'Cuántos de los {count}\u00a0perfiles están en cada estado',
  },
  Instrument: 'Instrumento',
  'Into {load}': 'Sobre {load}',
  'Load every output, whether it is read or not. Where a reading turns out past 1 % THD, write it down and go on. In the file, write the code once, in its first row; <code>readback import FILE</code> shows what becomes of it.':
    'Cargue todas las salidas, se lean o no. Si una lectura supera el 1 % de THD, anótela y siga. En el archivo escriba el código una sola vez, en su primera fila; <code>readback import FILE</code> muestra lo que resulta.',
  'Load each output with {load}, whether it is read or not. Where a reading at a step turns out past 1 % THD, take the next lower step and write it down.':
    'Cargue cada salida con {load}, se lea o no. Si una lectura en un paso supera el 1 % de THD, tome el paso inmediatamente inferior y anótelo.',
  'Load read, Ω': 'Carga leída, Ω',
  'Measured at {value}: too near a limit to tell.':
    'Medido: {value}; demasiado cerca de un límite para saberlo.',
  Missing: 'Falta',
  'Model lines': 'Líneas de modelos',
  'No answer waits for a reading.': 'Ninguna respuesta espera una lectura.',
  'No answer waits for a reading: there is nothing to take.':
    'Ninguna respuesta espera una lectura: no hay nada que tomar.',
  'Not measured.': 'Sin medir.',
  'Nothing to measure': 'Nada que medir',
  'One session': 'Una sesión',
  'One sheet for each profile. Volts are rms, across {load} at each output; THD in per cent, where the bench reads it.':
    'Una hoja por perfil. Los voltios son rms, sobre {load} en cada salida; la THD en tanto por ciento, donde el banco la lee.',
  'Readings are of profiles, and all model years of a unit have the same ones: its values count for each of them. The numbers are of values, all profiles of the unit together.':
    'Las lecturas son de perfiles, y todos los años de modelo de una unidad tienen los mismos: sus valores cuentan para cada uno. Los números son de valores, todos los perfiles de la unidad juntos.',
  'Sheet for the bench': 'Hoja para el banco',
  'Signal, dBFS': 'Señal, dBFS',
  'Supply, V': 'Alimentación, V',
  'Taken by, role': 'Tomada por, función',
  'The readings that answers wait for. Volts are rms, across the load; THD in per cent, where the bench reads it.':
    'Las lecturas que esperan las respuestas. Los voltios son rms, en la carga; la THD en tanto por ciento, donde el banco la lee.',
  'The readings that would settle most answers: step, output, frequency and load, with blank cells for volts and distortion.':
    'Las lecturas que aclararían más respuestas: paso, salida, frecuencia y carga, con casillas en blanco para voltios y distorsión.',
  'The readings wanted most, as a sheet with blank cells to print, and as a file with the columns of a sheet of readings.':
    'Las lecturas que más falta hacen, como hoja con casillas en blanco para imprimir y como archivo con las columnas de una hoja de lecturas.',
  'The {count}\u00a0rows as CSV': {
    one: 'La {count}\u00a0fila en CSV',
    other: 'Las {count}\u00a0filas en CSV',
  },
  'To fill in': 'Para rellenar',
  'To the bench': 'Al banco',
  'Two sessions or more': 'Dos sesiones o más',
  'Values measured, by model year': 'Valores medidos, por año de modelo',
  'Wanted most': 'Lo que más falta hace',
  'What is measured of each unit and model year, in how many sessions, what is missing, and which readings would settle most answers.':
    'Qué se ha medido de cada unidad y año de modelo, en cuántas sesiones, qué falta y qué lecturas aclararían más respuestas.',
  'What is worth reading of a profile of {unit}, with blank cells for volts and distortion: to print, or as CSV.':
    'Lo que conviene leer de un perfil de {unit}, con casillas en blanco para voltios y distorsión: para imprimir o en CSV.',
  Years: 'Años',
  'has a say in {count}\u00a0answers': {
    one: 'influye en {count}\u00a0respuesta',
    other: 'influye en {count}\u00a0respuestas',
  },
  'has a say in {number} more': 'influye en {number} más',
  missing: 'falta',
  'one session': 'una sesión',
  'repeat {number}': 'repetición {number}',
  'settles none alone': 'por sí solo no aclara ninguna',
  'two sessions or more': 'dos sesiones o más',
  'would settle {count}\u00a0answers': {
    one: 'aclararía {count}\u00a0respuesta',
    other: 'aclararía {count}\u00a0respuestas',
  },
  '{answers} wait for readings. What would settle most of them comes first. A value near a limit is settled only if the new readings narrow it down far enough.':
    '{answers} esperan lecturas. Primero va lo que aclararía más de ellas. Un valor cerca de un límite solo se aclara si las nuevas lecturas lo acotan lo suficiente.',
  '{count}\u00a0readings to take.': {
    one: '{count}\u00a0lectura por tomar.',
    other: '{count}\u00a0lecturas por tomar.',
  },
  '{count}\u00a0values read in two sessions or more, {single} in one, {missing} missing.': {
    one: '{count}\u00a0valor leído en dos sesiones o más, {single} en una, faltan {missing}.',
    other: '{count}\u00a0valores leídos en dos sesiones o más, {single} en una, faltan {missing}.',
  },
  '{unit}, by characteristic': '{unit}, por característica',
  '{unit}, {channel} ({abbreviation}), step {step}': '{unit}, {channel} ({abbreviation}), paso {step}',
};
