/** The readings wanted into one load, as a sheet of readings to fill in. */

import type { APIRoute, GetStaticPaths } from 'astro';
import { viewOf } from '../../views/store.ts';

export const getStaticPaths: GetStaticPaths = async () => {
  return (await viewOf('coverage')).sheets.map(({ id, csv }) => ({ params: { id }, props: { csv } }));
};

export const GET: APIRoute<{ readonly csv: string }> = ({ props }) =>
  new Response(props.csv, { headers: { 'content-type': 'text/csv; charset=utf-8' } });
