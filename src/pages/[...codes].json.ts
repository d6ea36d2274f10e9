/** What the code field looks codes up in: the compact list, or its parts, and the sentences shown with results. */
import { getCollection } from 'astro:content';
import type { APIRoute } from 'astro';
import type { CodeSentences, CodesFile } from '../views/code-list-format.ts';

export async function getStaticPaths() {
  const files = await getCollection('codeFiles');
  return files.map(({ id, data }) => ({
    params: { codes: id.replace(/\.json$/, '') },
    props: { content: data.content },
  }));
}
interface Props {
  readonly content: CodesFile | CodeSentences;
}

export const GET: APIRoute<Props> = ({ props }) =>
  new Response(JSON.stringify(props.content), { headers: { 'content-type': 'application/json' } });
