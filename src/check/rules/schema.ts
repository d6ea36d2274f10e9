import { readerRule } from '../rule.ts';

export const schema = readerRule({
  id: 'schema',
  title: 'Every field is there, of the right type, and within its bounds.',
  explanation:
    'Each kind of entry has a fixed set of fields, each with a type, a unit and bounds; the unit is part of the field’s name, so values are plain numbers. Codes are text and stand in quotes, because YAML reads 0x7E8 as the number 2024 and 1.10 as 1.1.',
  severity: 'error',
  examples: [
    {
      title: 'a code without quotation marks',
      file: 'profiles/fellside/310.yaml',
      good: 'code: "310"',
      bad: 'code: 310',
      foundAt: '310',
    },
    {
      title: 'a number with its unit',
      file: 'outputs/2025-05-shed/session.yaml',
      good: 'volts: 14.4',
      bad: 'volts: 14.4 V',
      foundAt: '14.4 V',
    },
  ],
});
