/** The start page, lists and what stands in for pages. */
import type { Texts } from '../language.ts';

export const pagesStartTexts: Texts = {
  'About {unit}': 'Acerca de {unit}',
  'All codes, unit by unit': 'Todos los códigos, unidad por unidad',
  'All guides': 'Todas las guías',
  'All units': 'Todas las unidades',
  'Also written {spellings}': 'También escrito {spellings}',
  'Before you start': 'Antes de empezar',
  'Before you touch the machine': 'Antes de tocar la moto',
  'Begin again': 'Empezar de nuevo',
  'By model line and year': 'Por línea de modelos y año',
  'By sight': 'A simple vista',
  Code: 'Código',
  'Code on your screen': 'Código en su pantalla',
  'Codes that fit': 'Códigos que coinciden',
  'Conditions of the session': 'Condiciones de la sesión',
  'Don’t have the code yet?': '¿Aún no tiene el código?',
  'Every known profile code, unit by unit, with what it puts out.':
    'Todos los códigos de perfil conocidos, unidad por unidad, con lo que entrega cada uno.',
  'Every profile we know, unit by unit. Compare character by character: on these screens 8 and B, 5 and S, 0 and O, 1 and I are easily taken for each other.':
    'Todos los perfiles que conocemos, unidad por unidad. Compare carácter por carácter: en estas pantallas 8 y B, 5 y S, 0 y O, 1 e I se confunden con facilidad.',
  'Faces are drawn to one scale each from measured plates. Pick the one you see in your fairing.':
    'Los frontales están dibujados a escala a partir de placas medidas. Elija el que ve en su carenado.',
  'Factory amplifier': 'Amplificador de fábrica',
  'Find it by model line and year': 'Buscarla por línea de modelos y año',
  'Find out which head unit is in your fairing: by model line and year, or by sight.':
    'Averigüe qué unidad principal lleva en el carenado: por línea de modelos y año, o a simple vista.',
  'Find your unit by sight': 'Reconocer su unidad a simple vista',
  'Find your unit. Its page says how to bring the code onto the screen, step by step.':
    'Busque su unidad. Su página dice cómo hacer aparecer el código en la pantalla, paso a paso.',
  'Forget them': 'Olvidarlos',
  'I don’t know': 'No lo sé',
  'In the pages': 'En las páginas',
  'It is this one': 'Es esta',
  'It rests on': 'Se apoya en',
  'Look up': 'Buscar',
  'Looked up on this device': 'Buscados en este dispositivo',
  'Looking up a code works without a network. So do the pages you have opened before and, once you have opened the page of your unit, the way to its code and the profiles of all its codes.':
    'Buscar un código funciona sin red. También las páginas que ya ha abierto y, una vez abierta la página de su unidad, el camino a su código y los perfiles de todos sus códigos.',
  Method: 'Método',
  'Model line': 'Línea de modelos',
  'Model year': 'Año de modelo',
  'Model years': 'Años de modelo',
  'Narrow down': 'Acotar',
  'No entry goes on this site before it passes a check: <link>what the check demands</link>.':
    'Ninguna entrada llega a este sitio sin pasar una revisión: <link>lo que exige la revisión</link>.',
  'No guide has been entered yet.': 'Aún no se ha publicado ninguna guía.',
  'No network': 'Sin red',
  'No network, and this page is not kept here': 'Sin red, y esta página no está guardada aquí',
  'No plan has been entered yet.': 'Aún no se ha publicado ningún plan.',
  'No such page': 'Página no encontrada',
  'None of them? Then it has not been measured here yet: ask us before you order anything.':
    '¿Ninguna de ellas? Entonces aún no se ha medido aquí: consúltenos antes de pedir nada.',
  'Profiles it measured': 'Perfiles que midió',
  'Profiles of {unit} for the plan {plan}': 'Perfiles de {unit} para el plan {plan}',
  'Say what you ride, answer a question if one is left, or pick the face you see.':
    'Diga qué moto conduce, responda una pregunta si aún queda alguna, o elija el frontal que ve.',
  'Search all units': 'Buscar en todas las unidades',
  'Set-ups riders ask about, each held against every profile: keep it, correct it, or have it changed.':
    'Montajes por los que preguntan los motoristas, cada uno comparado con todos los perfiles: conservarlo, corregirlo o hacer que lo cambien.',
  Source: 'Fuente',
  'Speakers straight on': 'Altavoces directos',
  'The faces are drawn to one scale from measured plates. The numbers on each mark what no other unit has.':
    'Los frontales están dibujados a la misma escala a partir de placas medidas. Los números señalan en cada uno lo que no tiene ninguna otra unidad.',
  'The head units we have measured, to be known by sight.':
    'Las unidades principales que hemos medido, para reconocerlas a simple vista.',
  'The page of the profile {code} has another address now.':
    'La página del perfil {code} tiene ahora otra dirección.',
  'The profile was renamed; its address is another one now.':
    'El perfil cambió de nombre; ahora su dirección es otra.',
  'There is no page at this address.': 'No hay ninguna página en esta dirección.',
  'There is nothing at this address. It may have been mistyped, or the page was renamed.':
    'No hay nada en esta dirección. Puede que se haya escrito mal o que la página haya cambiado de nombre.',
  'This page has moved': 'Esta página se ha trasladado',
  'Type it as it stands there; dashes, dots and spaces do not matter. Words work too.':
    'Escríbalo tal como aparece; guiones, puntos y espacios no importan. También sirven palabras.',
  'Units are changed in workshops. Where the face is another one than the table says, the face is right.':
    'En los talleres se cambian unidades. Si el frontal no es el que dice la tabla, vale el frontal.',
  Verdict: 'Veredicto',
  'Way in, step by step': 'Camino al código, paso a paso',
  'What can be read without a network.': 'Lo que se puede leer sin red.',
  'What rests on it': 'Lo que se apoya en ella',
  'What to know before you read, choose or wire anything.':
    'Lo que conviene saber antes de leer, elegir o cablear nada.',
  'Where every fact on this site was taken from, and how far we trust it.':
    'De dónde procede cada dato de este sitio y cuánto confiamos en ello.',
  'Where every fact was taken from, and how far we trust it.':
    'De dónde procede cada dato y cuánto confiamos en ello.',
  'Which unit a model line left the factory with': 'Con qué unidad salió de fábrica cada línea de modelos',
  'Which unit is it?': '¿Qué unidad es?',
  'Who measured this': 'Quién midió esto',
  Why: 'Por qué',
  'Words taken from it': 'Palabras tomadas de ella',
  '{code} has moved': '{code} se ha trasladado',
  '{code} of {unit}': '{code} de {unit}',
};
