/** A decision table as CSV. */
import { getCollection } from 'astro:content';
import type { APIRoute, GetStaticPaths } from 'astro';

export const getStaticPaths: GetStaticPaths = async () => {
  const entries = await getCollection('tableFiles');
  return entries.flatMap(({ id, data }) =>
    data.files.filter(({ form }) => form === 'csv').map(({ text }) => ({ params: { id }, props: { text } })),
  );
};

export const GET: APIRoute<{ readonly text: string }> = ({ props }) =>
  new Response(props.text, { headers: { 'content-type': 'text/csv; charset=utf-8' } });
