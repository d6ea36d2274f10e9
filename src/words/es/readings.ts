/** Readings, sessions, sources and what is missing. */
import type { Texts } from '../language.ts';

export const readingTexts: Texts = {
  'Not measured': 'Sin medir',
  'not measured': 'sin medir',
  'needs {readings}': 'necesita {readings}',
  'readings of front left at 1 kHz from two or more volume steps, with THD':
    'lecturas del delantero izquierdo a 1 kHz en dos o más pasos de volumen, con THD',
  'readings of front left at 20–250 Hz and at 1 kHz at one clean step':
    'lecturas del delantero izquierdo a 20–250 Hz y a 1 kHz en un paso limpio',
  'readings of front left at 1 kHz at every step, past the last clean one':
    'lecturas del delantero izquierdo a 1 kHz en todos los pasos, más allá del último limpio',
  'readings of front left at 1 kHz from more clean steps':
    'lecturas del delantero izquierdo a 1 kHz en más pasos limpios',
  'readings of front left below 1 kHz and at 1 kHz at one clean step':
    'lecturas del delantero izquierdo por debajo de 1 kHz y a 1 kHz en un paso limpio',
  'more readings of front left below its lower corner':
    'más lecturas del delantero izquierdo por debajo de su frecuencia de corte inferior',
  'readings of front left above 1 kHz and at 1 kHz at one clean step':
    'lecturas del delantero izquierdo por encima de 1 kHz y a 1 kHz en un paso limpio',
  'more readings of front left above its upper corner':
    'más lecturas del delantero izquierdo por encima de su frecuencia de corte superior',
  'a reading of front left at 10 kHz and one at 1 kHz at one clean step':
    'una lectura del delantero izquierdo a 10 kHz y otra a 1 kHz en un paso limpio',
  'readings of front left at third octaves from 315 Hz to 5 kHz at one clean step':
    'lecturas del delantero izquierdo por tercios de octava de 315 Hz a 5 kHz en un paso limpio',
  'readings of a rear and a front output at 1 kHz at one clean step':
    'lecturas de una salida trasera y una delantera a 1 kHz en un paso limpio',
  'readings of front left and front right at 1 kHz at one clean step':
    'lecturas del delantero izquierdo y del derecho a 1 kHz en un paso limpio',
  'readings at one clean step into two loads': 'lecturas en un paso limpio con dos cargas',
  'a reading of front left with the volume at silence':
    'una lectura del delantero izquierdo con el volumen en silencio',
  '{readings}, taken again with a finer meter': '{readings}, tomadas de nuevo con un medidor más fino',
  '{readings}, and the same at a second one': '{readings}, y lo mismo en un segundo paso',
  'an entry that says so': 'una entrada que lo diga',
  'Readings of {code}': 'Lecturas de {code}',
  'Every bench reading of the profile {code}, as it was taken.':
    'Todas las lecturas de banco del perfil {code}, tal como se tomaron.',
  'Output {channel}': 'Salida {channel}',
  silent: 'en silencio',
  plays: 'suena',
  'Taken on': 'Tomada el',
  Bench: 'Banco de medida',
  'Taken by': 'Tomada por',
  Voltmeter: 'Voltímetro',
  Resolution: 'Resolución',
  Accuracy: 'Exactitud',
  '{from} to {to}: ± ({percent} % of reading + {counts} counts)':
    '{from} a {to}: ± ({percent} % de la lectura + {counts} cuentas)',
  Distortion: 'Distorsión',
  'From {floor} % THD': 'Desde {floor} % THD',
  'From {floor} % THD, ± {percent} % of reading': 'Desde {floor} % THD, ± {percent} % de la lectura',
  'Test signal': 'Señal de prueba',
  Sine: 'Seno',
  Noise: 'Ruido',
  Sweep: 'Barrido',
  'Played from': 'Reproducida desde',
  Load: 'Carga',
  '{load} Ω per channel ± {tolerance} %': '{load} Ω por canal ± {tolerance} %',
  Supply: 'Alimentación',
  Kind: 'Tipo',
  Date: 'Fecha',
  'Kept at': 'Se guarda en',
  Trust: 'Confianza',
  High: 'Alta',
  Medium: 'Media',
  Low: 'Baja',
  'Trust: {trust}. {reason}': 'Confianza: {trust}. {reason}',
  '{kind} of {date}.': '{kind} del {date}.',
  'Bench session': 'Sesión de banco',
  'Service bulletin': 'Boletín de servicio',
  'Data sheet': 'Hoja de datos',
  'Riders’ report': 'Informe de motoristas',
  'Published standard': 'Norma publicada',
  Profiles: 'Perfiles',
  Plans: 'Planes',
  Tables: 'Tablas',
  'Sources taken from it': 'Fuentes tomadas de ella',
  '{count}\u00a0plan answers': {
    one: '{count}\u00a0respuesta de plan',
    other: '{count}\u00a0respuestas de plan',
  },
  '{count}\u00a0table answers': {
    one: '{count}\u00a0respuesta de tabla',
    other: '{count}\u00a0respuestas de tabla',
  },
  'where everything else is': 'dónde está todo lo demás',
  'a unit and its profiles': 'una unidad y sus perfiles',
  'a profile: values, answers, what they rest on': 'un perfil: valores, respuestas y en qué se apoyan',
  '{shop}: readings and what follows from them': '{shop}: lecturas y lo que se sigue de ellas',
  '{shop}: what changed': '{shop}: qué ha cambiado',
  'New: {profile}': 'Nuevo: {profile}',
  'Changed: {profile}': 'Cambiado: {profile}',
  'No longer listed: {profile}': 'Ya no figura: {profile}',
  'The profile {profile} is no longer on this site.': 'El perfil {profile} ya no está en este sitio.',
  'Bench session of {date}: {count}\u00a0profiles': {
    one: 'Sesión de banco del {date}: {count}\u00a0perfil',
    other: 'Sesión de banco del {date}: {count}\u00a0perfiles',
  },
  'Measured: {profiles}.': 'Medidos: {profiles}.',
  'Decided by: {by}. It holds until {date}.': 'Decidido por: {by}. Vale hasta el {date}.',
};
