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
    {
      title: 'millivolts in a field for volts',
      file: 'outputs/2025-05-shed/session.yaml',
      good: 'volts: 14.4',
      bad: 'volts: 14400',
      foundAt: '14400',
    },
    {
      title: 'no for false',
      file: 'plans/two-channel.yaml',
      good: 'canCorrect: false',
      bad: 'canCorrect: no',
      foundAt: 'no',
    },
    {
      title: 'a number with a nought before it',
      file: 'families/moorlight.md',
      good: 'highestStep: 30',
      bad: 'highestStep: 030',
      foundAt: '030',
    },
    {
      title: 'a date with the day first',
      file: 'outputs/2025-05-shed/session.yaml',
      good: 'date: 2025-05-12',
      bad: 'date: 12.05.2025',
      foundAt: '12.05.2025',
    },
    {
      title: 'a colour without quotation marks, which is a comment',
      file: 'site.yaml',
      good: 'accent: "#5a3a8a"',
      bad: 'accent: #5a3a8a',
      foundAt: '#5a3a8a',
    },
    {
      title: 'one value where a list is meant',
      file: 'profiles/moorlight/km-4417.yaml',
      good: 'sources: [shed-session]',
      bad: 'sources: shed-session',
      foundAt: 'shed-session',
    },
  ],
});
