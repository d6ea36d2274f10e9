/** Spanish, room by room of the source. */
import type { Language } from '../language.ts';
import { frameTexts } from './frame.ts';

export const spanish: Language = {
  tag: 'es',
  name: 'Español',
  texts: { en: 'es', 'en-GB': 'es', ...frameTexts },
};
