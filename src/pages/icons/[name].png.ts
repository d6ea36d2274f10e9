/** The site's mark in dots, for home screens that take no SVG. */

import type { APIRoute, GetStaticPaths } from 'astro';
import { dotIcons, markPng } from '../../components/mark.ts';
import { siteHere } from '../../components/site-here.ts';

export const getStaticPaths = (() =>
  Object.entries(dotIcons).map(([name, icon]) => ({
    params: { name },
    props: icon,
  }))) satisfies GetStaticPaths;

export const GET: APIRoute<(typeof dotIcons)[keyof typeof dotIcons]> = async ({ props }) => {
  const accent = siteHere().colours.accent ?? '#222222';
  const png = await markPng(accent, props.size, props.purpose === 'maskable');
  return new Response(new Uint8Array(png), { headers: { 'content-type': 'image/png' } });
};
