/** Spanish, by what the texts are about. */
import type { Language } from '../language.ts';
import { bassTexts } from './bass.ts';
import { cautionTexts } from './cautions.ts';
import { changeTexts } from './changes.ts';
import { correctionTexts } from './corrections.ts';
import { frameTexts } from './frame.ts';
import { gainTexts } from './gain.ts';
import { lookupTexts } from './lookup.ts';
import { pagesBenchTexts } from './pages-bench.ts';
import { pagesDataTexts } from './pages-data.ts';
import { pagesPlannerTexts } from './pages-planner.ts';
import { pagesProfileTexts } from './pages-profile.ts';
import { pagesStartTexts } from './pages-start.ts';
import { pagesTableTexts } from './pages-table.ts';
import { pagesUnitTexts } from './pages-unit.ts';
import { plannerTexts } from './planner.ts';
import { plotTexts } from './plots.ts';
import { readingTexts } from './readings.ts';
import { reasonTexts } from './reasons.ts';
import { speakerTexts } from './speakers.ts';
import { supplyTexts } from './supply.ts';
import { tableTexts } from './tables.ts';
import { valueTexts } from './values.ts';
import { walkTexts } from './walk.ts';

export const spanish: Language = {
  tag: 'es',
  name: 'Español',
  texts: {
    en: 'es',
    'en-GB': 'es',
    ...bassTexts,
    ...cautionTexts,
    ...correctionTexts,
    ...frameTexts,
    ...changeTexts,
    ...gainTexts,
    ...lookupTexts,
    ...pagesBenchTexts,
    ...pagesDataTexts,
    ...pagesPlannerTexts,
    ...pagesProfileTexts,
    ...pagesStartTexts,
    ...pagesTableTexts,
    ...pagesUnitTexts,
    ...plannerTexts,
    ...plotTexts,
    ...readingTexts,
    ...reasonTexts,
    ...speakerTexts,
    ...supplyTexts,
    ...tableTexts,
    ...valueTexts,
    ...walkTexts,
  },
};
