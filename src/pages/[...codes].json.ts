/** What the code field looks codes up in: the compact list, or its parts, and the sentences shown with results. */
import type { APIRoute } from 'astro';
import { idsOf, viewOf } from '../views/store.ts';

export async function getStaticPaths() {
  return (await idsOf('codeFiles')).map((id) => ({ params: { codes: id.replace(/\.json$/, '') } }));
}

export const GET: APIRoute = async ({ params }) =>
  new Response(JSON.stringify(await viewOf('codeFiles', `${params.codes}.json`)), {
    headers: { 'content-type': 'application/json' },
  });
