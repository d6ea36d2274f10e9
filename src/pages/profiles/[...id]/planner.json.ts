/** What the arithmetic of a plan needs of a profile. */
import { getCollection } from 'astro:content';
import type { APIRoute } from 'astro';

export async function getStaticPaths() {
  const entries = await getCollection('plannerProfiles');
  return entries.map(({ id, data }) => ({ params: { id }, props: { data } }));
}

export const GET: APIRoute = ({ props }) => {
  const { data } = props as { data: object };
  return new Response(JSON.stringify(data), { headers: { 'content-type': 'application/json' } });
};
