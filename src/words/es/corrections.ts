/** Where an entry can be corrected. */
import type { Texts } from '../language.ts';

export const correctionTexts: Texts = {
  'Suggest a correction': 'Proponer una corrección',
  'Suggest a correction: {what}': 'Proponer una corrección: {what}',
  'Correction: {file}, line {line}': 'Corrección: {file}, línea {line}',
  '{file}, line {line}': '{file}, línea {line}',
  'this unit': 'esta unidad',
  'the text about it': 'el texto sobre ella',
  'this way in': 'este acceso',
  'this profile': 'este perfil',
  'what “{title}” says': 'lo que dice «{title}»',
  'the readings of {date}': 'las lecturas del {date}',
  'this plan': 'este plan',
  'this table': 'esta tabla',
  'this guide': 'esta guía',
  'this source': 'esta fuente',
  'the conditions of {date}': 'las condiciones del {date}',
  'the words taken from it': 'las palabras tomadas de ella',
};
