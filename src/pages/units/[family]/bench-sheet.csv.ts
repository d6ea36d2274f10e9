/** The bench sheet of a unit as CSV. */
import type { APIRoute } from 'astro';
import { idsOf, viewOf } from '../../../views/store.ts';

export async function getStaticPaths() {
  return (await idsOf('blankSheets')).map((family) => ({ params: { family } }));
}

export const GET: APIRoute = async ({ params }) =>
  new Response((await viewOf('blankSheets', params.family)).csv, {
    headers: { 'content-type': 'text/csv; charset=utf-8' },
  });
