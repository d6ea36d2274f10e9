/** The answer of each code in a sentence, for the results of the code field: loaded after the list. */
import { getEntry } from 'astro:content';
import type { APIRoute } from 'astro';

export const GET: APIRoute = async () => {
  const codes = await getEntry('codes', 'codes');
  if (!codes) throw new Error('The collection “codes” is empty: the loaders have not run.');
  return new Response(JSON.stringify(codes.data.sentences), {
    headers: { 'content-type': 'application/json' },
  });
};
