/** What verdicts go by, of every profile of a unit. */
import type { APIRoute } from 'astro';
import { idsOf, viewOf } from '../../../views/store.ts';

export async function getStaticPaths() {
  return (await idsOf('plannerUnits')).map((family) => ({ params: { family } }));
}

export const GET: APIRoute = async ({ params }) =>
  new Response(JSON.stringify(await viewOf('plannerUnits', params.family)), {
    headers: { 'content-type': 'application/json' },
  });
