/** A decision table as CSV. */

import type { APIRoute, GetStaticPaths } from 'astro';
import { idsOf, viewOf } from '../../views/store.ts';

export const getStaticPaths: GetStaticPaths = async () => {
  const tables = await Promise.all(
    (await idsOf('tableFiles')).map(async (id) => ({ id, files: (await viewOf('tableFiles', id)).files })),
  );
  return tables.flatMap(({ id, files }) =>
    files.filter(({ form }) => form === 'csv').map(({ text }) => ({ params: { id }, props: { text } })),
  );
};

export const GET: APIRoute<{ readonly text: string }> = ({ props }) =>
  new Response(props.text, { headers: { 'content-type': 'text/csv; charset=utf-8' } });
