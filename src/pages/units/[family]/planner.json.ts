/** What verdicts go by, of every profile of a unit. */
import { getCollection } from 'astro:content';
import type { APIRoute } from 'astro';

export async function getStaticPaths() {
  const entries = await getCollection('plannerUnits');
  return entries.map(({ id, data }) => ({ params: { family: id }, props: { data } }));
}

export const GET: APIRoute = ({ props }) => {
  const { data } = props as { data: object };
  return new Response(JSON.stringify(data), { headers: { 'content-type': 'application/json' } });
};
