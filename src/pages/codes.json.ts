/** The compact list of codes for the code field. */
import { getEntry } from 'astro:content';
import type { APIRoute } from 'astro';

export const GET: APIRoute = async () => {
  const codes = await getEntry('codes', 'codes');
  if (!codes) throw new Error('The collection “codes” is empty: the loaders have not run.');
  return new Response(JSON.stringify(codes.data.list), { headers: { 'content-type': 'application/json' } });
};
