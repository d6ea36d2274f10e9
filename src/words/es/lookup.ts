/** Looking a code up: the field, its results, the page’s age, the walk aloud, which unit it is. */
import type { Texts } from '../language.ts';

export const lookupTexts: Texts = {
  // Advice and notes of a lookup.
  'This code is used by several units: pick yours.': 'Varias unidades usan este código: elija la suya.',
  'This is {code}.': 'Es {code}.',
  'More than one profile fits: compare the unit before you choose.':
    'Encaja más de un perfil: compare la unidad antes de elegir.',
  'Look at the {place} character again: is it {options}?':
    'Mire otra vez el {place} carácter: ¿es {options}?',
  'This is the beginning of a code: go on, or pick one.': 'Es el principio de un código: siga, o elija uno.',
  'This unit has no such code, but another one has: check which unit it is.':
    'Esta unidad no tiene ese código, pero otra sí: compruebe qué unidad es.',
  'No profile known here has this code. Read it once more from the screen that shows the active code, character by character; if it stays the same, it has not been measured yet.':
    'Ningún perfil conocido aquí tiene este código. Léalo otra vez en la pantalla que muestra el código activo, carácter por carácter; si sigue igual, aún no se ha medido.',
  'Compare it with your screen, character by character.': 'Compárelo con su pantalla, carácter por carácter.',
  'About {number} codes begin like this: go on typing.':
    'Unos {number} códigos empiezan así: siga escribiendo.',
  'Only codes that begin or end like this were searched. The page of your unit leads to a search of all of its codes.':
    'Solo se han buscado códigos que empiezan o acaban así. La página de su unidad lleva a una búsqueda entre todos los suyos.',
  'These come nearest.': 'Estos son los más parecidos.',
  'exactly as typed': 'exactamente como se escribió',
  'same code, written differently': 'el mismo código, escrito de otro modo',
  'same code but for zeros at the beginning': 'el mismo código, salvo ceros al principio',
  'begins like this': 'empieza así',
  'alike as far as compared': 'igual hasta donde se comparó',
  'as written {code}: {note}': 'escrito {code}: {note}',
  'several families have it: pick yours': 'varias unidades lo tienen: elija la suya',
  '{count} characters differ': { one: '{count} carácter distinto', other: '{count} caracteres distintos' },
  'one character missing at the beginning': 'falta un carácter al principio',
  'one character missing after the {nth}': 'falta un carácter después del {nth}',
  'one character too many at the beginning': 'sobra un carácter al principio',
  'one character too many after the {nth}': 'sobra un carácter después del {nth}',
  '{nth} character typed twice': '{nth} carácter escrito dos veces',
  '{nth} and {next} characters swapped': '{nth} y {next} carácter intercambiados',
  '{nth} character: is it {shown} or {typed}?': '{nth} carácter: ¿es {shown} o {typed}?',
  first: 'primer',
  second: 'segundo',
  third: 'tercer',
  fourth: 'cuarto',
  fifth: 'quinto',
  sixth: 'sexto',
  seventh: 'séptimo',
  eighth: 'octavo',
  ninth: 'noveno',
  tenth: 'décimo',
  eleventh: 'undécimo',
  twelfth: 'duodécimo',
  '{position}st': '{position}.º',
  '{position}nd': '{position}.º',
  '{position}rd': '{position}.º',
  '{position}th': '{position}.º',
  // The field and its pages.
  'The list of codes did not come through. Check the signal and type again.':
    'La lista de códigos no llegó. Compruebe la señal y escriba de nuevo.',
  'Codes of {name} only.': 'Solo códigos de {name}.',
  'Searching for words needs the network, and it did not come through. Codes work without.':
    'Buscar palabras necesita la red, y no hubo conexión. Los códigos funcionan sin ella.',
  'No page speaks of “{words}”. Try fewer or other words.':
    'Ninguna página habla de “{words}”. Pruebe con menos palabras o con otras.',
  'One page speaks of “{words}”.': 'Una página habla de “{words}”.',
  'Pages that speak of “{words}”, best first.': 'Páginas que hablan de “{words}”, las mejores primero.',
  Trait: 'Rasgo',
  // The field on other sites.
  'Type it as it stands there; dashes, dots and spaces do not matter.':
    'Escríbalo como está ahí; guiones, puntos y espacios no importan.',
  'Everything known of {code}': 'Todo lo que se sabe de {code}',
  'These are words. Type the code that stands on the screen.':
    'Esto son palabras. Escriba el código que está en la pantalla.',
  // How old the page is.
  'There is a network again:': 'Hay red otra vez:',
  'Load the page': 'Cargar la página',
  'This is what was published on {date}. A newer version is there:':
    'Esto es lo publicado el {date}. Hay una versión más nueva:',
  'A newer version is there:': 'Hay una versión más nueva:',
  'Load it': 'Cargarla',
  'No network: this is what was published on {date}.': 'Sin red: esto es lo publicado el {date}.',
  'The network does not answer: this is what was published on {date}.':
    'La red no responde: esto es lo publicado el {date}.',
  // The walk, aloud.
  'Reading aloud: stop': 'Leyendo en voz alta: parar',
  // Which unit it is.
  'I can’t tell': 'No lo sé',
  'All about {name}': 'Todo sobre {name}',
  Yes: 'Sí',
  One: 'Uno',
  Two: 'Dos',
  'More than two': 'Más de dos',
  'None of these': 'Ninguna de estas cosas',
  'Which of these do you see?': '¿Cuál de estas cosas ve usted?',
  'How many knobs that turn are on the face?': '¿Cuántos mandos giratorios hay en el frente?',
  'Are there keys to press on the face, outside the screen?':
    '¿Hay teclas en el frente, fuera de la pantalla?',
  'Do some of the keys bear numbers?': '¿Llevan números algunas de las teclas?',
  'Is the face slim, more than twice as wide as high?':
    '¿Es el frente bajo, más de dos veces más ancho que alto?',
  'With the ignition on, what are the characters on the screen made of?':
    'Con el encendido puesto, ¿de qué están hechos los caracteres de la pantalla?',
  'Square dots that can be counted': 'De puntos cuadrados que se pueden contar',
  'Seven straight strokes, as on a clock': 'De siete trazos rectos, como en un reloj',
  'Smooth letters, as on a telephone': 'De letras lisas, como en un teléfono',
  'With the ignition on, does the screen answer to a finger?':
    'Con el encendido puesto, ¿responde la pantalla al dedo?',
};
