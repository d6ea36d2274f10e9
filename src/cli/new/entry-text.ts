/** An entry as the text of its file: fields in the order of the schema, codes in quotes, long texts folded. */
import { Document, Pair, Scalar, YAMLMap, YAMLSeq } from 'yaml';
import { blockFor, type EntryAnswers } from './answers.ts';
import type { Shape } from './fields.ts';

/** Lines are folded here, as in the entries there are. */
const lineWidth = 100;

/** The “name: value” lines of an entry. */
export function entryLines(shape: Shape, answers: EntryAnswers): string {
  const document = new Document(nodeOf(shape, answers));
  return document.toString({ lineWidth, flowCollectionPadding: true });
}

type Node = Scalar | YAMLMap | YAMLSeq;

function nodeOf(shape: Shape, value: unknown): Node {
  switch (shape.is) {
    case 'value':
      return scalarOf(value, shape.inQuotes);
    case 'list': {
      const list = new YAMLSeq<Node>();
      for (const one of value as readonly unknown[]) list.items.push(onOneLine(nodeOf(shape.of, one)));
      return list;
    }
    case 'record':
      return mapOf(Object.entries(value as EntryAnswers).map(([name, one]) => [name, nodeOf(shape.of, one)]));
    default: {
      const fields = blockFor(shape, value)?.fields ?? [];
      return mapOf(
        fields.flatMap(({ name, shape: inner }): [string, Node][] => {
          const one = (value as EntryAnswers)[name];
          return one === undefined ? [] : [[name, nodeOf(inner, one)]];
        }),
      );
    }
  }
}

function mapOf(pairs: readonly (readonly [name: string, node: Node])[]): YAMLMap {
  const map = new YAMLMap();
  for (const [name, node] of pairs) map.items.push(new Pair(new Scalar(name), node));
  return map;
}

function scalarOf(value: unknown, inQuotes: boolean): Scalar {
  const scalar = new Scalar(value);
  if (typeof value !== 'string') return scalar;
  if (inQuotes) scalar.type = 'QUOTE_DOUBLE';
  else if (value.length > lineWidth - 20) scalar.type = 'BLOCK_FOLDED';
  return scalar;
}

/** A short block in a list stands on one line, as `{ model: Ordwick, fromYear: 2006 }`. */
function onOneLine(node: Node): Node {
  if (!(node instanceof YAMLMap)) return node;
  const values = node.items.map((pair) => (pair as Pair<Scalar, Node>).value);
  const length = node.items.reduce(
    (sum, pair) => sum + String(pair.key).length + String(pair.value).length + 4,
    4,
  );
  if (length < lineWidth - 10 && values.every((one) => one instanceof Scalar)) node.flow = true;
  return node;
}
