/** The planner’s page: its form, its answer, its figures and its card. */
import type { Texts } from '../language.ts';

export const plannerTexts: Texts = {
  // What is still to be said, and what cannot be read.
  'Say which unit you have: by model line and year, or straight away.':
    'Diga qué unidad tiene: por línea de modelos y año, o directamente.',
  'Which code does your {unit} show?': '¿Qué código muestra su {unit}?',
  'How to read it': 'Cómo leerlo',
  'Not worked out: put right what is marked in the form.':
    'Sin calcular: corrija lo marcado en el formulario.',
  'No unit is called “{name}”.': 'Ninguna unidad se llama “{name}”.',
  'Choose it from the list.': 'Elíjala de la lista.',
  '{unit} has no known profile “{code}”.': 'No se conoce ningún perfil “{code}” de {unit}.',
  'Compare it with your screen, character by character, and choose it from the list.':
    'Compárelo con su pantalla, carácter por carácter, y elíjalo de la lista.',
  'No class of equipment is called “{id}”.': 'Ninguna clase de equipo se llama “{id}”.',
  'There are none yet.': 'Aún no hay ninguna.',
  'There are: {ids}.': 'Hay: {ids}.',
  '“{text}” cannot be used here.': '“{text}” no sirve aquí.',
  'Give a number from {least} to {most}.': 'Dé un número de {least} a {most}.',
  'The least input volts are above the most.': 'Los voltios mínimos de entrada superan a los máximos.',
  'Full power with the gain fully up needs the fewer volts.':
    'La plena potencia con la ganancia al máximo es la que menos voltios necesita.',
  '“{wish}” is nothing that is bought for a plan.': '“{wish}” no es nada que se compre para un plan.',
  'Give one of: {names}.': 'Dé uno de estos: {names}.',
  'The planner’s data did not come through. Check the signal and load the page again.':
    'Los datos del planificador no llegaron. Compruebe la señal y vuelva a cargar la página.',
  'The data of this unit did not come through. Check the signal, then change any field to try again.':
    'Los datos de esta unidad no llegaron. Compruebe la señal y cambie cualquier campo para intentarlo de nuevo.',
  'Its data did not come through. Check the signal and choose it again.':
    'Sus datos no llegaron. Compruebe la señal y elíjalo de nuevo.',
  // The answer.
  'for {code}': 'para {code}',
  'Was:': 'Era:',
  'Was and still is:': 'Era y sigue siendo:',
  'Now:': 'Ahora:',
  'Take the change back': 'Deshacer el cambio',
  'Borderline.': 'En el límite.',
  'Not known yet.': 'Aún no se sabe.',
  'Within the uncertainty of the readings it comes to: {verdicts}.':
    'Dentro de la incertidumbre de las lecturas resulta: {verdicts}.',
  'It may come to: {verdicts}.': 'Puede resultar: {verdicts}.',
  'Known more exactly, this alone would settle it: {columns}.':
    'Conocido con más exactitud, esto solo bastaría para decidir: {columns}.',
  '{first}, or {next}': '{first}, o {next}',
  '{first}, and {next}': '{first}, y {next}',
  'More that would do ({count})': 'Otros cambios que bastarían ({count})',
  'Take another amplifier: {name}': 'Tomar otro amplificador: {name}',
  'Take other front speakers: {name}': 'Tomar otros altavoces delanteros: {name}',
  'Take other rear speakers: {name}': 'Tomar otros altavoces traseros: {name}',
  'Leave the rear speakers out': 'Prescindir de los altavoces traseros',
  'Have the profile changed to {code}': 'Hacer cambiar el perfil a {code}',
  'In this order the profile can stay through every stage, and nothing is bought twice.':
    'En este orden el perfil puede quedarse en todas las etapas, y nada se compra dos veces.',
  'No order is sure to keep this profile through every stage; in this one it is in question least often.':
    'Ningún orden asegura que este perfil valga en todas las etapas; en este se pone en duda menos veces.',
  'The amplifier': 'El amplificador',
  'The front speakers': 'Los altavoces delanteros',
  'The rear speakers': 'Los altavoces traseros',
  'The subwoofer': 'El subwoofer',
  // Sections, filters and figures.
  'Setting the gain': 'Ajustar la ganancia',
  'Where the bass clips': 'Dónde recortan los graves',
  'Bass and small speakers': 'Graves y altavoces pequeños',
  'Equaliser settings': 'Ajustes del ecualizador',
  'Speakers on the amplifier': 'Altavoces en el amplificador',
  'Current, fuse and wire': 'Corriente, fusible y cable',
  'How loud at your ear': 'Cuánto llega a su oído',
  'The code in the other unit': 'El código en la otra unidad',
  'Where these values come from': 'De dónde vienen estos valores',
  'common practice, no source': 'práctica común, sin fuente',
  'Peak or dip': 'Pico o valle',
  'Low shelf': 'Meseta de graves',
  'High shelf': 'Meseta de agudos',
  'High-pass': 'Paso alto',
  'Level by volume step': 'Nivel por paso de volumen',
  'Level by volume step. Shaded: clean.': 'Nivel por paso de volumen. Sombreado: limpio.',
  'Frequency response': 'Respuesta en frecuencia',
  'Response as it is and with the equaliser settings below.':
    'Respuesta tal como es y con los ajustes del ecualizador de abajo.',
  'Response at the clean steps. A band about a curve is its uncertainty (95 %).':
    'Respuesta en los pasos limpios. La banda alrededor de una curva es su incertidumbre (95 %).',
  'as it is': 'tal como es',
  corrected: 'corregida',
  'set the gain at {step}': 'ajuste la ganancia en {step}',
  // Side by side.
  'Response of {one} at step {step} and {other} at step {otherStep}.':
    'Respuesta de {one} en el paso {step} y de {other} en el paso {otherStep}.',
  'Responses of two profiles': 'Respuestas de dos perfiles',
  '{one} and {other}': '{one} y {other}',
  Difference: 'Diferencia',
  'only a limit is known': 'solo se conoce un límite',
  'the same within uncertainty': 'igual dentro de la incertidumbre',
  // The job card.
  '{unit}, code': '{unit}, código',
  'Filter {number}': 'Filtro {number}',
  'Fitted now': 'Montado ahora',
  'none: the unit drives the speakers': 'ninguno: la unidad alimenta los altavoces',
  Front: 'Delanteros',
  'to be replaced': 'se cambia por otra',
};
