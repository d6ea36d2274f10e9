/** A sequence: the way from a dark screen to the active code, as a small state machine. */
import { z } from 'zod';
import { caution, line, paragraph, reference, slug, sources } from '../common.ts';

const seconds = z.number().min(0).max(600);

/** The moments a hold can begin or end at. */
export const moments = [
  'with-ignition',
  'prompt-shown',
  'prompt-gone',
  'screen-changes',
  'any-time',
] as const;
const moment = z.enum(moments);

const ignition = z.strictObject({
  kind: z.literal('ignition'),
  position: z.enum(['on', 'off', 'accessory']).meta({ description: 'Where the ignition is turned to.' }),
});
const wait = z.strictObject({
  kind: z.literal('wait'),
  leastSeconds: seconds.meta({ description: 'How long it takes at least.' }),
  mostSeconds: seconds.meta({ description: 'After how long to give up and start again.' }),
});
const press = z.strictObject({
  kind: z.enum(['press', 'tap']).meta({ description: 'press: a key or knob. tap: a touch area.' }),
  control: slug.meta({ description: 'The control, by its id on the face.' }),
  times: z.int().min(1).max(20).default(1).meta({ description: 'How often, 1 where absent.' }),
});
const hold = z.strictObject({
  kind: z.literal('hold'),
  controls: z.array(slug).min(1).meta({ description: 'What is held; several are held together.' }),
  begin: moment.meta({ description: 'The moment the hold begins.' }),
  end: moment.meta({ description: 'The moment to let go.' }),
  leastSeconds: seconds.meta({ description: 'How long it takes at least.' }),
  mostSeconds: seconds.meta({ description: 'After how long to give up and start again.' }),
});
const turn = z.strictObject({
  kind: z.literal('turn'),
  control: slug.meta({ description: 'The knob, by its id on the face.' }),
  direction: z.enum(['clockwise', 'anticlockwise']).meta({ description: 'Which way to turn.' }),
  clicks: z.int().min(1).max(100).meta({ description: 'How many clicks.' }),
});

export const actionSchema = z
  .discriminatedUnion('kind', [ignition, wait, press, hold, turn])
  .meta({ description: 'What the rider does, or what is waited for.' });

const recovery = z.strictObject({
  seen: line.meta({ description: 'What is seen instead.' }),
  advice: line.meta({ description: 'What to do about it.' }),
  goTo: slug.meta({ description: 'The state to take up again from.' }),
});

const state = z
  .strictObject({
    id: slug.meta({ description: 'The name transitions use for it.' }),
    see: paragraph.meta({ description: 'What is seen in this state.' }),
    shows: z.enum(['nothing', 'profile-list', 'active-code']).default('nothing').meta({
      description: 'Whether a code can be read here: none, the list of all held, or the active one.',
    }),
    activeCodeAt: line
      .optional()
      .meta({ description: 'Where on this screen the active code stands (only with shows: active-code).' }),
    notActiveCode: z
      .array(line)
      .default([])
      .meta({ description: 'What on this screen looks like a code but is not the active one.' }),
    recovery: z.array(recovery).default([]).meta({ description: 'Ways on when something else is seen.' }),
  })
  .meta({ description: 'A state: what the rider sees.' });

export const sequenceSchema = z
  .strictObject({
    family: reference('families/'),
    name: line.meta({ description: 'A name for this way in, such as "Hold with ignition".' }),
    summary: paragraph.meta({ description: 'The whole way in, in a sentence or two.' }),
    cautions: z.array(caution).min(1).meta({ description: 'Cautions shown before the first step.' }),
    start: slug.meta({ description: 'The state the rider starts in.' }),
    states: z.array(state).min(2).meta({ description: 'What the rider sees on the way.' }),
    transitions: z
      .array(
        z.strictObject({
          from: slug.meta({ description: 'The state it starts in.' }),
          to: slug.meta({ description: 'The state it leads to.' }),
          action: actionSchema,
          say: line.meta({ description: 'The step in one plain sentence.' }),
        }),
      )
      .min(1)
      .meta({ description: 'The steps from state to state.' }),
    sources,
  })
  .meta({ title: 'Sequence', description: 'The way to the active code: one file in sequences/.' });

export type Sequence = z.infer<typeof sequenceSchema>;
export type SequenceAction = z.infer<typeof actionSchema>;
