/** What the arithmetic of a plan needs of a profile: made when it is written, as all at once would fill the memory. */
import { getCollection } from 'astro:content';
import type { APIRoute } from 'astro';
import { currentAnswers } from '../../../views/current.ts';
import { plannerProfile } from '../../../views/planner-data.ts';

export async function getStaticPaths() {
  const entries = await getCollection('profilePages');
  return entries.map(({ id }) => ({ params: { id } }));
}

export const GET: APIRoute = async ({ params }) => {
  const data = plannerProfile(await currentAnswers(), params.id ?? '');
  if (!data) throw new Error(`There is no profile ${params.id}.`);
  return new Response(JSON.stringify(data), { headers: { 'content-type': 'application/json' } });
};
