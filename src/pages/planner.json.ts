/** What the planner needs for every plan. */
import type { APIRoute } from 'astro';
import { viewOf } from '../views/store.ts';

export const GET: APIRoute = async () =>
  new Response(JSON.stringify(await viewOf('planner')), { headers: { 'content-type': 'application/json' } });
