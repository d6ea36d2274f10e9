/** Decision tables. */
import type { Texts } from '../language.ts';

export const pagesTableTexts: Texts = {
  '<strong>Borderline.</strong> {label}: <link>{value}</link> lies too near to a limit to tell.':
    '<strong>En el límite.</strong> {label}: <link>{value}</link> está demasiado cerca de un límite para saberlo.',
  '<strong>Not known.</strong> {label} was not measured.': '<strong>No se sabe.</strong> {label}: sin medir.',
  'As <link>its sources</link> say.': 'Según dicen <link>sus fuentes</link>.',
  'Before you touch anything': 'Antes de tocar nada',
  'Borderline: the value lies so near to a limit that its uncertainty reaches across. What would settle it, or what was not measured:':
    'En el límite: el valor está tan cerca de un límite que su incertidumbre lo cruza. Lo que lo aclararía, o lo que no se midió:',
  'Depends on': 'Depende de',
  'In {unit}.': 'En {unit}.',
  'No profile has been entered yet.': 'Aún no se ha publicado ningún perfil.',
  'No table has been entered yet.': 'Aún no se ha publicado ninguna tabla.',
  'None of the rules before it decides. They look at:':
    'No decide ninguna de las reglas anteriores. Estas miran:',
  'Not decided': 'Sin decidir',
  'Profiles of this unit': 'Perfiles de esta unidad',
  'Proved each time this site is made': 'Comprobado cada vez que se crea este sitio',
  Read: 'Leer',
  Rule: 'Regla',
  'Rule {number} of “{table}”': 'Regla {number} de «{table}»',
  'The profiles by answer': 'Los perfiles por respuesta',
  'The rules': 'Las reglas',
  'To take along': 'Para llevar',
  'What would settle it: {advice}.': 'Lo que lo aclararía: {advice}.',
  'What you plan': 'Lo que planea',
  'Which profiles': 'Qué perfiles',
  'Which profiles pass which test': 'Qué perfiles cumplen qué condición',
  'Which rule decides follows from the whole plan: <link>Your plan</link> works it out.':
    'Qué regla decide depende del plan entero: <link>Su plan</link> lo calcula.',
  'You are asked:': 'Se le pregunta:',
  'You know your code. What follows from it? The rules our workshop decides by: the same questions, the same answers, whoever asks.':
    'Ya sabe su código. ¿Qué se sigue de él? Las reglas con las que decide nuestro taller: las mismas preguntas, las mismas respuestas, pregunte quien pregunte.',
  'in any case': 'en cualquier caso',
};
