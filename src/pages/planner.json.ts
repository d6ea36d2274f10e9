/** What the planner needs for every plan. */
import { getEntry } from 'astro:content';
import type { APIRoute } from 'astro';

export const GET: APIRoute = async () => {
  const planner = await getEntry('planner', 'planner');
  if (!planner) throw new Error('The collection “planner” is empty: the loaders have not run.');
  return new Response(JSON.stringify(planner.data), { headers: { 'content-type': 'application/json' } });
};
