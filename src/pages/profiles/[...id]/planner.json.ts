/** What the arithmetic of a plan needs of a profile. */
import type { APIRoute } from 'astro';
import { idsOf, viewOf } from '../../../views/store.ts';

export async function getStaticPaths() {
  return (await idsOf('plannerProfiles')).map((id) => ({ params: { id } }));
}

export const GET: APIRoute = async ({ params }) =>
  new Response(JSON.stringify(await viewOf('plannerProfiles', params.id)), {
    headers: { 'content-type': 'application/json' },
  });
