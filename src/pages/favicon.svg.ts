/** The site's mark in the shop's colour. */

import type { APIRoute } from 'astro';
import { markSvg } from '../components/mark.ts';
import { siteHere } from '../components/site-here.ts';

export const GET: APIRoute = () => {
  const accent = siteHere().colours.accent ?? '#222222';
  return new Response(markSvg(accent), { headers: { 'content-type': 'image/svg+xml' } });
};
