/** Answers as the YAML of an entry: fields in the order of its schema, which says what stands in quotes; long texts folded. */
import { Document, Pair, Scalar, YAMLMap, YAMLSeq } from 'yaml';
import { entryLineWidth, entryYaml } from '../../base/index.ts';
import { blockFor, type EntryAnswers } from './answers.ts';
import type { Shape } from './fields.ts';

/** The “name: value” lines of an entry. */
export function entryLines(shape: Shape, answers: EntryAnswers): string {
  return entryYaml(new Document(nodeOf(shape, answers)));
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
  else if (value.length > entryLineWidth - 20) scalar.type = 'BLOCK_FOLDED';
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
  if (length < entryLineWidth - 10 && values.every((one) => one instanceof Scalar)) node.flow = true;
  return node;
}
