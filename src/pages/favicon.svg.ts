/** The site's mark, a bench card with its stub, in the shop's colour. */
import { getEntry } from 'astro:content';
import type { APIRoute } from 'astro';

export const GET: APIRoute = async () => {
  const accent = (await getEntry('site', 'site'))?.data.colours.accent ?? '#222222';
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><rect width="32" height="32" fill="#fff"/><path d="M2 5h11v22H2z" fill="${accent}"/><path d="M16 5h14v22H16m3-15h8m-8 4h8m-8 4h5" fill="none" stroke="#14171a" stroke-width="2"/></svg>`;
  return new Response(svg, { headers: { 'content-type': 'image/svg+xml' } });
};
