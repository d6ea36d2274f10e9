/** The text of an entry a program writes: YAML that reads like a bench card. */
import { Document, isScalar, Scalar } from 'yaml';

/** How an entry is shown; the keys name fields that are codes and fields that are prose. */
const quotedFields = ['code', 'otherSpellings'];
const proseFields = ['about', 'method', 'quote', 'trustReason'];

/**
 * Writes data as a YAML entry. Codes stand in quotes whether YAML needs them or not, prose is folded, and a
 * field that is undefined or an empty list is left out.
 * @param schema name of the JSON Schema file; depth: folders between the entry and the folder schemas/ lies in.
 */
export function entryText(schema: string, depth: number, data: Readonly<Record<string, unknown>>): string {
  const kept = Object.entries(data).filter(
    ([, value]) => value !== undefined && !(Array.isArray(value) && value.length === 0),
  );
  const document = new Document(Object.fromEntries(kept));
  for (const [field] of kept) {
    const node = document.get(field, true);
    if (proseFields.includes(field) && isScalar(node)) node.type = Scalar.BLOCK_FOLDED;
    if (!quotedFields.includes(field)) continue;
    const codes = isScalar(node) ? [node] : ((document.get(field) as { items: unknown[] }).items ?? []);
    for (const code of codes) if (isScalar(code)) code.type = Scalar.QUOTE_DOUBLE;
  }
  const comment = `# yaml-language-server: $schema=${'../'.repeat(depth)}schemas/json/${schema}.schema.json\n`;
  return comment + document.toString({ lineWidth: 100, flowCollectionPadding: true });
}

/** The id of the source entry of a bench session. */
export function benchSourceId(sessionId: string): string {
  return `bench-${sessionId}`;
}
