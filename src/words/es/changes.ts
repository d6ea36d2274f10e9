/** What differs between two states of the content, as the feed of changes tells it. */
import type { Texts } from '../language.ts';

export const changeTexts: Texts = {
  'Bass boost with the volume': 'Realce de graves con el volumen',
  Origin: 'Origen',
  'Silent while the front plays': 'En silencio mientras suenan los delanteros',
  none: 'ninguno',
  'no other': 'ningún otro',
  'no amplifier': 'sin amplificador',
  'the same behind': 'los mismos detrás',
  'whatever is planned': 'se planee lo que se planee',
  'in {differing} of {cases} cases, such as {example}': 'en {differing} de {cases} casos, como {example}',
  'The code is written {code} now; before, {was}.': 'El código se escribe ahora {code}; antes, {was}.',
  'For the plan “{plan}” the answer is now “{is}”; before, “{was}”.':
    'Para el plan “{plan}” la respuesta es ahora “{is}”; antes, “{was}”.',
  '“{question}” is answered {is} now; before, {was}.': '“{question}” se responde ahora {is}; antes, {was}.',
  '“{question}” is answered {is} now; before, {was} ({where}).':
    '“{question}” se responde ahora {is}; antes, {was} ({where}).',
  '{label}: {is}; before, {was}.': '{label}: {is}; antes, {was}.',
  '{label}: {is}; not known before.': '{label}: {is}; antes no se sabía.',
  '{label}: not known any more; before, {was}.': '{label}: ya no se sabe; antes, {was}.',
  'Puts out the same as {is}; before, as {was}.': 'Entrega lo mismo que {is}; antes, que {was}.',
};
