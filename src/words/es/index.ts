/** Spanish, by what the texts are about. */
import type { Language } from '../language.ts';
import { cautionTexts } from './cautions.ts';
import { frameTexts } from './frame.ts';
import { pagesBenchTexts } from './pages-bench.ts';
import { pagesDataTexts } from './pages-data.ts';
import { pagesPlannerTexts } from './pages-planner.ts';
import { pagesProfileTexts } from './pages-profile.ts';
import { pagesStartTexts } from './pages-start.ts';
import { pagesTableTexts } from './pages-table.ts';
import { pagesUnitTexts } from './pages-unit.ts';
import { readingTexts } from './readings.ts';
import { tableTexts } from './tables.ts';
import { valueTexts } from './values.ts';
import { walkTexts } from './walk.ts';

export const spanish: Language = {
  tag: 'es',
  name: 'Español',
  texts: {
    en: 'es',
    'en-GB': 'es',
    ...frameTexts,
    ...valueTexts,
    ...readingTexts,
    ...walkTexts,
    ...tableTexts,
    ...cautionTexts,
    ...pagesBenchTexts,
    ...pagesDataTexts,
    ...pagesPlannerTexts,
    ...pagesProfileTexts,
    ...pagesStartTexts,
    ...pagesTableTexts,
    ...pagesUnitTexts,
  },
};
