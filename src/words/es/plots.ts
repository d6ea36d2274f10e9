/** What stands in plots, and what they show for those who cannot see them. */
import type { Texts } from '../language.ts';

export const plotTexts: Texts = {
  'clean to {step}': 'limpio hasta {step}',
  'clean at {step}': 'limpio en {step}',
  'From {volts} volts at step {step} to {lastVolts} volts at step {lastStep}.':
    'De {volts} voltios en el paso {step} a {lastVolts} voltios en el paso {lastStep}.',
  'Clean up to step {step}, at {volts}.': 'Limpio hasta el paso {step}, con {volts}.',
  'Clean at every step measured.': 'Limpio en todos los pasos medidos.',
  '{curve}: highest {peakDb} decibels at {peakHz} hertz, lowest {lowDb} decibels at {lowHz} hertz.':
    '{curve}: máximo de {peakDb} decibelios a {peakHz} hercios, mínimo de {lowDb} decibelios a {lowHz} hercios.',
  'or: {label}': 'o: {label}',
};
