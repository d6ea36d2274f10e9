/** The readings wanted into one load, as a sheet of readings to fill in. */
import { getEntry } from 'astro:content';
import type { APIRoute, GetStaticPaths } from 'astro';

export const getStaticPaths: GetStaticPaths = async () => {
  const coverage = await getEntry('coverage', 'coverage');
  return (coverage?.data.sheets ?? []).map(({ id, csv }) => ({ params: { id }, props: { csv } }));
};

export const GET: APIRoute<{ readonly csv: string }> = ({ props }) =>
  new Response(props.csv, { headers: { 'content-type': 'text/csv; charset=utf-8' } });
