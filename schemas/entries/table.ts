/** A decision table: rules a shop decides by, as rows (OMG DMN, with its hit policies and unary tests). */
import { z } from 'zod';
import { characteristicNames } from '../characteristics.ts';
import { date, fieldNotes, line, paragraph, reference, slug, sources } from '../common.ts';

/** Facts about a profile that are not numbers, and the greatest boost, which is one of several numbers. */
export const traitNames = [
  'system',
  'origin',
  'boost-behaviour',
  'rear-outputs',
  'greatest-bass-boost',
] as const;
export type TraitName = (typeof traitNames)[number];

/** What the planner works out of a plan and a profile, or what the rider plans. */
export const reckonedNames = [
  'feeds',
  'replacement-unit',
  'rear-wanted',
  'can-correct',
  'level-short',
  'level-over',
  'boost-over',
  'low-end-short',
  'rear-below-front',
  'suitable-profiles',
] as const;
export type ReckonedName = (typeof reckonedNames)[number];

const column = {
  id: slug.meta({ description: 'The name the rules use for this column.' }),
  label: line.meta({ description: 'What stands above the column: “Clean volts”.' }),
};
const unit = line.optional().meta({ description: 'Its unit: V, dB, Hz, Ω, W.' });
const values = z
  .array(line)
  .min(2, { error: 'a choice has at least two values' })
  .meta({ description: 'What it can be.' });
const mayBeMissing = z.boolean().default(false).meta({
  description:
    'true where rules have something to say of profiles it was not measured of (the test null); otherwise it counts as “could be anything”.',
});
const question = line.meta({ description: 'What the rider is asked: “Do you want rear speakers?”' });

export const tableInputSchema = z.discriminatedUnion('holds', [
  z.strictObject({
    ...column,
    holds: z.literal('characteristic').meta({ description: 'A value computed from readings.' }),
    characteristic: z.enum(characteristicNames).meta({ description: 'Which one.' }),
    mayBeMissing,
  }),
  z.strictObject({
    ...column,
    holds: z.literal('trait').meta({ description: 'A fact about the profile that is no single value.' }),
    trait: z.enum(traitNames).meta({ description: 'Which one.' }),
    mayBeMissing,
  }),
  z.strictObject({
    ...column,
    holds: z.literal('reckoned').meta({ description: 'What the planner works out of plan and profile.' }),
    reckoned: z.enum(reckonedNames).meta({
      description:
        'Which one. level-short and level-over: dB short of, or over, what the amplifier’s input takes; boost-over: dB of bass boost above what the speakers may get; low-end-short: octaves by which the bass ends too early; rear-below-front: dB; suitable-profiles: how many other profiles of the unit suit the plan.',
    }),
  }),
  z.strictObject({
    ...column,
    holds: z.literal('number').meta({ description: 'A number the rider plans with.' }),
    question,
    unit,
    least: z.number().optional().meta({ description: 'The least it can be.' }),
    most: z.number().optional().meta({ description: 'The most it can be.' }),
    whole: z.boolean().default(false).meta({ description: 'true where only whole numbers are meant.' }),
  }),
  z.strictObject({
    ...column,
    holds: z.literal('choice').meta({ description: 'One of several, as the rider plans.' }),
    question,
    values,
  }),
  z.strictObject({
    ...column,
    holds: z.literal('yes-no').meta({ description: 'Yes or no, as the rider plans.' }),
    question,
  }),
  z.strictObject({
    ...column,
    holds: z.literal('date').meta({ description: 'A day.' }),
    question,
    least: date.optional().meta({ description: 'The first day it can be.' }),
    most: date.optional().meta({ description: 'The last day it can be.' }),
  }),
]);

export const tableOutputSchema = z.discriminatedUnion('holds', [
  z.strictObject({
    ...column,
    holds: z.literal('choice').meta({ description: 'One of several answers.' }),
    values: values.meta({ description: 'The answers it can give, the one that goes first at the top.' }),
    otherwise: line.optional().meta({ description: 'The answer where no rule fits.' }),
  }),
  z.strictObject({
    ...column,
    holds: z.literal('number'),
    unit,
    otherwise: z.number().optional().meta({ description: 'The answer where no rule fits.' }),
  }),
  z.strictObject({
    ...column,
    holds: z.literal('yes-no'),
    otherwise: z.boolean().optional().meta({ description: 'The answer where no rule fits.' }),
  }),
  z.strictObject({
    ...column,
    holds: z.literal('text'),
    otherwise: line.optional().meta({ description: 'The answer where no rule fits.' }),
  }),
]);

const cell = z.union([z.string(), z.number(), z.boolean()], {
  error: 'write one test or value here, in quotes: "< 4.2"',
});
fieldNotes.add(cell, { inQuotes: true });

export const tableRuleSchema = z.strictObject({
  id: slug.meta({ description: 'A name of its own for the rule; links lead to it.' }),
  when: z.record(z.string(), cell).default({}).meta({
    description:
      'For each column that matters, its test, in quotes: "< 4.2", ">= 1", "[1..3]", "fixed, fading", "not(none)". A column left out may be anything.',
  }),
  give: z.record(z.string(), cell).meta({ description: 'For each output, the answer.' }),
  say: paragraph.optional().meta({ description: 'The answer in words, for the rider.' }),
  guides: z.array(reference('guides/')).default([]).meta({ description: 'Guides to read with it.' }),
  profiles: z.array(reference('profiles/')).default([]).meta({ description: 'Profiles it points to.' }),
  sources: z
    .array(reference('sources/'))
    .default([])
    .meta({ description: 'What this rule rests on, beside the sources of the table.' }),
});

export const tableSchema = z
  .strictObject({
    name: line.meta({ description: 'The table in a few words.' }),
    question: line.meta({ description: 'The question it answers, in the rider’s words.' }),
    about: paragraph.meta({ description: 'What it decides, and what it leaves out.' }),
    order: z.int().min(0).max(1000).meta({ description: 'Place in lists, lowest first.' }),
    hit: z
      .enum(['unique', 'any', 'priority', 'first', 'output order', 'rule order', 'collect'])
      .meta({ description: 'Which of the rules that fit give the answer: the hit policies of OMG DMN.' }),
    aggregate: z
      .enum(['sum', 'min', 'max', 'count'])
      .optional()
      .meta({ description: 'What “collect” makes of the answers; absent: a list.' }),
    decides: z.enum(['plan']).optional().meta({
      description:
        'plan: the planner’s verdicts are this table’s answers; one table at most. Without one a table of the program’s own decides.',
    }),
    inputs: z
      .array(tableInputSchema)
      .min(1)
      .max(40)
      .meta({ description: 'What the rules ask about, a column each.' }),
    outputs: z.array(tableOutputSchema).min(1).max(10).meta({ description: 'What the rules answer.' }),
    rules: z.array(tableRuleSchema).min(1).max(1000).meta({ description: 'The rules, from the top down.' }),
    sources,
  })
  .meta({ title: 'Decision table', description: 'What the shop decides by, as rules: one file in tables/.' });

export type TableEntry = z.infer<typeof tableSchema>;
export type TableEntryInput = z.infer<typeof tableInputSchema>;
export type TableEntryRule = z.infer<typeof tableRuleSchema>;
