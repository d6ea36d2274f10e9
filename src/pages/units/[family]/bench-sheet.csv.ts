/** The bench sheet of a unit as CSV. */
import { getCollection } from 'astro:content';
import type { APIRoute, GetStaticPaths } from 'astro';

export const getStaticPaths: GetStaticPaths = async () =>
  (await getCollection('blankSheets')).map(({ id, data }) => ({
    params: { family: id },
    props: { csv: data.csv },
  }));

export const GET: APIRoute<{ readonly csv: string }> = ({ props }) =>
  new Response(props.csv, { headers: { 'content-type': 'text/csv; charset=utf-8' } });
