/** The page of a unit and the way to its code. */
import type { Texts } from '../language.ts';

export const pagesUnitTexts: Texts = {
  '<kbd>1</kbd> to <kbd>9</kbd>': '<kbd>1</kbd> a <kbd>9</kbd>',
  '<kbd>Enter</kbd> or <kbd>Space</kbd>': '<kbd>Intro</kbd> o <kbd>Espacio</kbd>',
  '<kbd>Esc</kbd> or <kbd>Backspace</kbd>': '<kbd>Esc</kbd> o <kbd>Retroceso</kbd>',
  '<strong>No code stands here yet.</strong> This is not one:':
    '<strong>Aquí aún no hay ningún código.</strong> Esto no lo es:',
  '<strong>This list is not your answer.</strong> It names what the unit holds, not what it runs.':
    '<strong>Esta lista no es su respuesta.</strong> Nombra lo que la unidad guarda, no lo que usa.',
  '<strong>You are looking at the list.</strong> It is not your answer: go on.':
    '<strong>Está viendo la lista.</strong> No es su respuesta: siga.',
  'All states of “{name}” and the steps between them; the same in words below.':
    'Todos los estados de «{name}» y los pasos entre ellos; lo mismo en palabras más abajo.',
  Answers: 'Respuestas',
  Back: 'Atrás',
  'Before step 1 you see': 'Antes del paso 1 se ve',
  'Before step 1:': 'Antes del paso 1:',
  'Before you wire or measure': 'Antes de cablear o medir',
  'Begin in 5\u00a0s': 'Empezar en 5\u00a0s',
  'By keys': 'Con teclas',
  'Card to print': 'Tarjeta para imprimir',
  'Code read:': 'Código leído:',
  'Count anew': 'Contar otra vez',
  'Drawing of the whole way, scrolls sideways': 'Dibujo de todo el camino, se desplaza de lado',
  'Drawn to scale, {width} by {height} millimetres. Controls: {controls}.':
    'Dibujado a escala, {width} por {height} milímetros. Mandos: {controls}.',
  'Face of the unit. Watch the screen, touch nothing.':
    'Frontal de la unidad. Mire la pantalla, no toque nada.',
  'Face of the unit. {action}: {controls}.': 'Frontal de la unidad. {action}: {controls}.',
  'Face of {unit}': 'Frontal de {unit}',
  'Fitted to': 'Montada en',
  'Head unit': 'Unidad principal',
  'Here is the active code.': 'Aquí está el código activo.',
  'If you see something else': 'Si ve otra cosa',
  'Instead: {seen} Take up again at <strong>{to}</strong>.':
    'En cambio: {seen} Retome en <strong>{to}</strong>.',
  'Is it this one?': '¿Es esta?',
  'Known profiles': 'Perfiles conocidos',
  'Known profiles of {unit}': 'Perfiles conocidos de {unit}',
  'Look it up': 'Buscarlo',
  'Look up the code you read': 'Buscar el código leído',
  'Meant for': 'Pensado para',
  'More about it': 'Más sobre ella',
  'No profile of this unit is known yet.': 'Aún no se conoce ningún perfil de esta unidad.',
  'No way to the code of this unit is known yet. Ask us.':
    'Aún no se conoce ningún camino al código de esta unidad. Consúltenos.',
  'Not part of it': 'No forma parte de él',
  'Not part of it:': 'No forma parte de él:',
  'Not your answer:': 'No es su respuesta:',
  'On paper': 'En papel',
  'One label for the unit and one for each profile, for the shelf, the bench and the job bag. On A4 and on Letter they are cut along the dashed lines.':
    'Una etiqueta para la unidad y una para cada perfil, para el estante, el banco y la bolsa del trabajo. En A4 y en carta se recortan por las líneas discontinuas.',
  'Other ways in': 'Otros caminos',
  'Other ways through': 'Otras formas de llegar',
  'Other ways through:': 'Otras formas de llegar:',
  'Print the card': 'Imprimir la tarjeta',
  'Printed, this page is one card: cautions, steps, what is not the code, and a line to write it on.':
    'Impresa, esta página es una sola tarjeta: precauciones, pasos, lo que no es el código y una línea para anotarlo.',
  'Puts out': 'Entrega',
  'QR codes of {unit}': 'Códigos QR de {unit}',
  'QR codes to print': 'Códigos QR para imprimir',
  'Read aloud': 'Leer en voz alta',
  'Read its code': 'Leer su código',
  'Read the code': 'Leer el código',
  'Solid lines are steps. Dashed lines are ways on when something else is seen.':
    'Las líneas continuas son pasos. Las discontinuas, cómo seguir cuando se ve otra cosa.',
  'Step by step: {name}': 'Paso a paso: {name}',
  'Step {number}.': 'Paso {number}.',
  'The active code:': 'El código activo:',
  'The drawing in words': 'El dibujo en palabras',
  'The face of {unit}': 'El frontal de {unit}',
  'The pages of {unit} and of each of its profiles as QR codes, to print and cut.':
    'Las páginas de {unit} y de cada uno de sus perfiles como códigos QR, para imprimir y recortar.',
  'The screen is kept awake.': 'La pantalla se mantiene encendida.',
  'The whole way': 'Todo el camino',
  'Then you see:': 'Después se ve:',
  'They work while the walk has the focus: touch it anywhere, or tab to it.':
    'Funcionan mientras el recorrido tiene el foco: tóquelo en cualquier parte o llegue a él con el tabulador.',
  'Type it here': 'Escríbalo aquí',
  'What it puts out': 'Lo que entrega',
  'What the code looks like:': 'Cómo es el código:',
  'What to look for': 'Qué hay que buscar',
  back: 'atrás',
  'the choice with that number': 'la opción con ese número',
  'the filled button: start the count, go on': 'el botón relleno: empezar la cuenta, seguir',
  'watch here': 'mire aquí',
  '{action}: leads to <strong>{to}</strong>.': '{action}: lleva a <strong>{to}</strong>.',
  '{name}: the way in to {unit}': '{name}: el camino al código de {unit}',
  '{unit}, profile': '{unit}, perfil',
  '{unit}: the way to the active code': '{unit}: el camino al código activo',
};
