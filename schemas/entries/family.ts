/** A head-unit family: units that look alike, are read alike and share one set of profiles. */
import { z } from 'zod';
import { caution, channel, fieldNotes, line, paragraph, slug, sources, year } from '../common.ts';

const mm = z.number().min(0).max(1000);

const screen = z.strictObject({
  xMm: mm.meta({ description: 'Left edge, millimetres from the left edge of the face.' }),
  yMm: mm.meta({ description: 'Top edge, millimetres from the top edge of the face.' }),
  widthMm: mm.meta({ description: 'Width, millimetres.' }),
  heightMm: mm.meta({ description: 'Height, millimetres.' }),
  display: z
    .enum(['dot-matrix', 'seven-segment', 'anti-aliased'])
    .meta({ description: 'How the screen forms its characters: decides which of them look alike.' }),
  touch: z.boolean().meta({ description: 'true where the screen answers to touch.' }),
});

const control = z.strictObject({
  id: slug.meta({ description: 'The name sequences use for it.' }),
  label: line.meta({ description: 'What is printed on it, or how a rider would call it.' }),
  kind: z
    .enum(['key', 'knob', 'touch-area'])
    .meta({ description: 'A key on the bezel, a turning knob, or an area of the touch screen.' }),
  xMm: mm.meta({ description: 'Centre, millimetres from the left edge of the face.' }),
  yMm: mm.meta({ description: 'Centre, millimetres from the top edge of the face.' }),
  widthMm: mm.meta({ description: 'Width or diameter, millimetres.' }),
  heightMm: mm.meta({ description: 'Height or diameter, millimetres.' }),
});

export const familySchema = z
  .strictObject({
    name: line.meta({ description: 'The name riders and shop use for the family.' }),
    alsoCalled: z.array(line).default([]).meta({ description: 'Other names it goes by.' }),
    maker: line.meta({ description: 'The maker of the motorcycles it is fitted to.' }),
    summary: paragraph.meta({ description: 'One or two sentences for lists and search results.' }),
    fitment: z
      .array(
        z.strictObject({
          model: line.meta({ description: 'Model line.' }),
          fromYear: year.meta({ description: 'First model year with this unit.' }),
          toYear: year.meta({ description: 'Last model year with this unit.' }),
        }),
      )
      .min(1)
      .meta({ description: 'The model lines and years it came in.' }),
    identify: z
      .array(
        z.strictObject({
          feature: line.meta({ description: 'What a rider sees that no other family has.' }),
          control: slug.optional().meta({ description: 'The control of the face it points to.' }),
        }),
      )
      .min(1)
      .meta({ description: 'How to tell the family by sight.' }),
    face: z
      .strictObject({
        widthMm: mm.meta({ description: 'Width of the face plate, millimetres.' }),
        heightMm: mm.meta({ description: 'Height of the face plate, millimetres.' }),
        screen: screen.meta({ description: 'The screen.' }),
        controls: z.array(control).min(1).meta({ description: 'Keys, knobs and touch areas.' }),
      })
      .meta({ description: 'The face plate, measured, for drawings.' }),
    output: z
      .strictObject({
        channels: z.array(channel).min(1).meta({ description: 'The speaker outputs it has.' }),
        topology: z
          .enum(['bridged', 'ground-referenced'])
          .meta({ description: 'bridged: both terminals are driven and neither is ground.' }),
        ratedLoadOhms: z.number().min(1).max(600).meta({ description: 'Rated load per channel, ohms.' }),
      })
      .meta({ description: 'What the output stage is.' }),
    volume: z
      .strictObject({
        lowestStep: z.int().min(0).max(200).meta({ description: 'The lowest step.' }),
        highestStep: z.int().min(1).max(200).meta({ description: 'The highest step.' }),
      })
      .meta({ description: 'The volume steps the screen counts.' }),
    code: z
      .strictObject({
        pattern: z
          .string()
          .min(1)
          .register(fieldNotes, { inQuotes: true })
          .meta({ description: 'Regular expression (ECMA-262) that every code of the family matches.' }),
        where: line.meta({ description: 'What a rider is to read: how long it is, what is not part of it.' }),
      })
      .meta({ description: 'What a code of this family looks like.' }),
    cautions: z.array(caution).min(1).meta({ description: 'Cautions that apply to work on this unit.' }),
    sources,
  })
  .meta({ title: 'Family', description: 'A head-unit family: front matter of one file in families/.' });

export type Family = z.infer<typeof familySchema>;
