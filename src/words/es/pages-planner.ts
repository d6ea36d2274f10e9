/** The planner and usual plans. */
import type { Texts } from '../language.ts';

export const pagesPlannerTexts: Texts = {
  '* common practice, no source. A figure after ± is the expanded uncertainty (95 %).':
    '* práctica común, sin fuente. La cifra tras ± es la incertidumbre expandida (95 %).',
  Amplifier: 'Amplificador',
  'Another head unit takes the place of this one': 'Otra unidad principal ocupa el lugar de esta',
  Any: 'Cualquiera',
  'Battery to amplifier, m': 'De la batería al amplificador, m',
  'Battery, Ah': 'Batería, Ah',
  'Beside another profile': 'Junto a otro perfil',
  'Choose it': 'Elija',
  'Code of the other profile': 'Código del otro perfil',
  'Code on its screen': 'Código en su pantalla',
  'Data of': 'Datos del',
  Day: 'Día',
  'Done by': 'Hecho por',
  'Each line with its formula, what was put in and where that comes from. The figure after ± is the expanded uncertainty: the value lies within it with a probability of about 95 %.':
    'Cada línea con su fórmula, lo que se puso y de dónde viene. La cifra tras ± es la incertidumbre expandida: el valor queda dentro de ella con una probabilidad de alrededor del 95 %.',
  'Factory amplifier in it now': 'Amplificador de fábrica que lleva ahora',
  'For the bench': 'Para el banco',
  Found: 'Encontrado',
  'From its data sheet. What is left empty is as in the class chosen above.':
    'De su hoja de datos. Lo que quede vacío es como en la clase elegida arriba.',
  'Front speakers': 'Altavoces delanteros',
  'Generator, A': 'Generador, A',
  'If it is bought in stages, first': 'Si se compra por etapas, primero',
  'In which order to buy': 'En qué orden comprar',
  'Input, gain fully down, V': 'Entrada, ganancia al mínimo, V',
  'Input, gain fully up, V': 'Entrada, ganancia al máximo, V',
  'Into, Ω': 'Sobre, Ω',
  'Job card': 'Ficha de trabajo',
  'Left empty, each is as usual.': 'Si se deja vacío, cada valor es el habitual.',
  Machine: 'Moto',
  'No known profile yet with this code. <link>Look it up</link>, misread or not.':
    'Aún no se conoce ningún perfil con este código. <link>Búsquelo</link>, bien o mal leído.',
  None: 'Ninguno',
  'None of your choosing': 'Ninguno elegido',
  'None: the unit drives the speakers': 'Ninguno: altavoces directos',
  'Not sure what to ask for? <link>The usual plans</link> are each held against every profile.':
    '¿No sabe qué pedir? <link>Los planes habituales</link> están comparados con todos los perfiles.',
  'Numbers of your own amplifier': 'Datos de su propio amplificador',
  'Or type the code': 'O escriba el código',
  'Other profiles that suit': 'Otros perfiles que sirven',
  'Overlap of the gain, dB': 'Solape de la ganancia, dB',
  Planned: 'Previsto',
  'Power of a channel, W': 'Potencia de un canal, W',
  'Print the job card': 'Imprimir la ficha de trabajo',
  'Printed, this page is a job card: settings, targets, cautions, sources, and room for what was found.':
    'Impresa, esta página es una ficha de trabajo: ajustes, objetivos, precauciones, fuentes y espacio para lo que se encontró.',
  'Rear speakers': 'Altavoces traseros',
  'Say the unit first': 'Diga primero la unidad',
  'Say what you ride and what you want to fit. The answer changes as you do; it is worked out on your device, and nothing is sent anywhere.':
    'Diga qué moto conduce y qué quiere montar. La respuesta cambia mientras lo hace; se calcula en su dispositivo y no se envía nada a ninguna parte.',
  'Say what you ride and what you want to fit: does your profile suit it, what to change, how to set it up.':
    'Diga qué moto conduce y qué quiere montar: si su perfil sirve para ello, qué cambiar, cómo ajustarlo.',
  'See why': 'Ver por qué',
  'Set, reach, check': 'Ajustar, alcanzar, comprobar',
  'Sources:': 'Fuentes:',
  'Speakers to your ear, m': 'De los altavoces a su oído, m',
  Subwoofer: 'Subwoofer',
  'Supply, engine running, V': 'Alimentación, motor en marcha, V',
  'The arithmetic': 'El cálculo',
  'The machine takes, A': 'La moto consume, A',
  'This page works a plan out while you fill it in, and needs scripts for it. Without them, here are the usual plans, each held against every profile; your profile’s own page holds it against each of them.':
    'Esta página calcula un plan mientras usted lo rellena y para ello necesita scripts. Sin ellos, aquí están los planes habituales, cada uno comparado con todos los perfiles; la página de su perfil lo compara con cada uno de ellos.',
  'What would make it work': 'Qué haría que funcione',
  'What you want': 'Lo que quiere',
  'Whatever is best': 'Lo que más convenga',
  'Wire, supply, generator': 'Cable, alimentación, generador',
  'Your motorcycle': 'Su motocicleta',
};
