/** The site's mark in the shop's colour. */
import { getEntry } from 'astro:content';
import type { APIRoute } from 'astro';
import { markSvg } from '../components/mark.ts';

export const GET: APIRoute = async () => {
  const accent = (await getEntry('site', 'site'))?.data.colours.accent ?? '#222222';
  return new Response(markSvg(accent), { headers: { 'content-type': 'image/svg+xml' } });
};
