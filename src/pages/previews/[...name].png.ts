/** The pictures of link previews: one for the site, one a unit, one for each kind of profile. */

import type { APIRoute, GetStaticPaths } from 'astro';
import { type PreviewSubject, previewPng } from '../../components/preview.ts';
import { siteHere } from '../../components/site-here.ts';
import { viewOf } from '../../views/store.ts';

interface Props {
  subject: PreviewSubject;
}

export const getStaticPaths = (async () => {
  const { units } = await viewOf('whichUnit');
  const systems = ['amplified', 'unamplified'] as const;
  const subjects: [name: string, subject: PreviewSubject][] = [
    ['site', { kind: 'site' }],
    ...systems.map((system): [string, PreviewSubject] => [`profiles/${system}`, { kind: 'profile', system }]),
    ...units.map(({ id, name, face }): [string, PreviewSubject] => [
      `units/${id}`,
      { kind: 'unit', name, face },
    ]),
  ];
  return subjects.map(([name, subject]) => ({ params: { name }, props: { subject } }));
}) satisfies GetStaticPaths;

export const GET: APIRoute<Props> = async ({ props }) => {
  const site = siteHere();
  const png = await previewPng(site.colours.accent, site.name, props.subject);
  return new Response(new Uint8Array(png), { headers: { 'content-type': 'image/png' } });
};
