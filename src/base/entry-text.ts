/** The text of an entry a program writes: YAML that reads like a bench card. */
import { Document, isScalar, Scalar } from 'yaml';

/** Lines are folded here, characters. */
export const entryLineWidth = 100;

/** The first line of an entry: where editors find its schema. @param address as seen from the entry's folder. */
export function schemaComment(address: string): string {
  return `# yaml-language-server: $schema=${address}\n`;
}

/** The “name: value” lines of an entry. */
export function entryYaml(document: Document): string {
  return document.toString({ lineWidth: entryLineWidth, flowCollectionPadding: true });
}

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
  return schemaComment(`${'../'.repeat(depth)}schemas/json/${schema}.schema.json`) + entryYaml(document);
}
