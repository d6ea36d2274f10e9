/** What stands around every page. */
import type { Texts } from '../language.ts';

export const frameTexts: Texts = {
  'All codes': 'Todos los códigos',
  'All codes of {unit}': 'Todos los códigos de {unit}',
  'Known profile codes of {unit}, with what they put out.':
    'Códigos de perfil conocidos de {unit}, con lo que entregan.',
  '{first} to {last}': 'De {first} a {last}',
  'All pages': 'Todas las páginas',
  'Content of': 'Contenido del',
  'Correct an entry': 'Corregir una entrada',
  'Data for other programs': 'Datos para otros programas',
  Guides: 'Guías',
  'Look up a code': 'Buscar un código',
  Pages: 'Páginas',
  'Skip to the content': 'Ir al contenido',
  Sources: 'Fuentes',
  'The code field on your own page': 'El campo de código en su propia página',
  'This address as a QR code': 'Esta dirección como código QR',
  Units: 'Unidades',
  'Usual plans': 'Planes habituales',
  'What changed': 'Qué ha cambiado',
  'What is not measured yet': 'Lo que aún no se ha medido',
  'What now?': '¿Y ahora qué?',
  'What the check demands': 'Lo que exige la revisión',
  'You are in': 'Usted está en',
  'Your plan': 'Su plan',
};
