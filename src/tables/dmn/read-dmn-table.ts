/** The `decisionTable` of a DMN file → its columns and rules. */

import { counted } from '../../words/index.ts';
import { UnusableFile } from '../file-fault.ts';
import { type Aggregation, aggregations, type HitPolicy, hitPolicies } from '../table.ts';
import { all, normalName, only, textOf } from './elements.ts';
import { literalsOf } from './feel-text.ts';
import { type FeelTypes, narrowed, withOwn } from './feel-type.ts';
import {
  type DmnColumn,
  type DmnOutput,
  type DmnRule,
  type DmnTable,
  type FeelText,
  ownNamespace,
  ruleIdColumn,
} from './model.ts';
import type { XmlElement } from './xml-tree.ts';

/** Reads the tables of one file. */
export class TableReader {
  readonly #root: XmlElement;
  readonly #types: FeelTypes;

  constructor(root: XmlElement, types: FeelTypes) {
    this.#root = root;
    this.#types = types;
  }

  /**
   * Other languages than FEEL would be read as something they are not.
   * @throws UnusableFile
   */
  assertFeel(element: XmlElement): void {
    const language =
      element.attributes.get('expressionLanguage') ?? this.#root.attributes.get('expressionLanguage');
    if (language === undefined || /\bs?-?feel\b|\/FEEL\/?$/i.test(language)) return;
    throw new UnusableFile(
      element.span,
      `This is written in “${language}”; only FEEL is read.`,
      'Write it in FEEL, the language of DMN.',
    );
  }

  /**
   * @param typeRef the type of the decision, for an only output that says none.
   * @throws UnusableFile where the table is not whole.
   */
  table(element: XmlElement, name: string, typeRef: string | undefined): DmnTable {
    const inputs = all(element, 'input').map((one) => this.#column(one));
    const outputs = all(element, 'output').map((one, _, { length }) =>
      this.#output(
        one,
        length,
        name,
        length === 1 ? (element.attributes.get('typeRef') ?? typeRef) : undefined,
      ),
    );
    if (outputs.length === 0) {
      throw new UnusableFile(element.span, `The table of “${name}” has no output.`, 'Give it one.');
    }
    assertApart(outputs);
    const annotations = all(element, 'annotation').map((one) => one.attributes.get('name') ?? '');
    const rules = named(
      all(element, 'rule').map((one) => this.#rule(one, inputs.length, outputs.length, annotations)),
    );
    const columns = inputs.map((column, index) => ({
      ...column,
      mayBeMissing: column.mayBeMissing || rules.some(({ tests }) => namesNull(tests[index]?.text ?? '')),
    }));
    return {
      kind: 'table',
      hitPolicy: hitPolicyOf(element),
      aggregation: aggregationOf(element),
      inputs: columns,
      outputs,
      rules,
      span: element.span,
    };
  }

  #column(element: XmlElement): DmnColumn {
    const expression = only(element, 'inputExpression');
    const text = expression && textOf(expression);
    if (!text || text.text === '') {
      throw new UnusableFile(
        element.span,
        'An input of this table has no expression: there is nothing to test.',
        'Write the name of an input into it.',
      );
    }
    this.assertFeel(expression);
    const values = only(element, 'inputValues');
    const type = narrowed(this.#types.named(expression.attributes.get('typeRef')), values);
    return {
      label: element.attributes.get('label') ?? text.text,
      expression: text,
      type: withOwn(type, element),
      mayBeMissing:
        element.foreign.get(`${ownNamespace} mayBeMissing`) === 'true' ||
        namesNull(values ? textOf(values).text : ''),
    };
  }

  #output(element: XmlElement, count: number, decision: string, typeRef: string | undefined): DmnOutput {
    const name = normalName(element.attributes.get('name') ?? '');
    if (name === '' && count > 1) {
      throw new UnusableFile(
        element.span,
        `An output of “${decision}” has no name, but the table has ${count}.`,
        'Give every output a name of its own.',
      );
    }
    const values = only(element, 'outputValues');
    const otherwise = only(element, 'defaultOutputEntry');
    const type = withOwn(
      narrowed(this.#types.named(element.attributes.get('typeRef') ?? typeRef), values),
      element,
    );
    return {
      name,
      label: element.attributes.get('label') ?? (name === '' ? decision : name),
      type,
      priorities: (values && literalsOf(textOf(values).text)) ?? (type.kind === 'choice' ? type.values : []),
      otherwise: otherwise && emptyAside(textOf(otherwise)),
      span: element.span,
    };
  }

  #rule(
    element: XmlElement,
    inputs: number,
    outputs: number,
    annotations: readonly string[],
  ): DmnRule & { readonly annotatedId: string | undefined } {
    const tests = all(element, 'inputEntry');
    const results = all(element, 'outputEntry');
    if (tests.length !== inputs || results.length !== outputs) {
      const message = `This rule has ${counted(tests.length, 'test')} and ${counted(results.length, 'result')}, but the table has ${counted(inputs, 'input')} and ${counted(outputs, 'output')}.`;
      throw new UnusableFile(element.span, message, 'Give it one a column.');
    }
    for (const one of [...tests, ...results]) this.assertFeel(one);
    const notes = all(element, 'annotationEntry').map((one) => textOf(one).text.trim());
    const idAt = annotations.indexOf(ruleIdColumn);
    const says = notes.filter((note, index) => index !== idAt && note !== '').join(' ');
    const description = only(element, 'description')?.text.trim();
    return {
      id: element.attributes.get('id') ?? '',
      annotatedId: notes[idAt] === '' ? undefined : notes[idAt],
      // An empty test is what tools write for “any value” (“-”).
      tests: tests.map((one) => {
        const text = textOf(one);
        return text.text === '' ? { ...text, text: '-' } : text;
      }),
      results: results.map(textOf),
      says: says === '' ? description : says,
      span: element.span,
    };
  }
}

/** Rules by their annotated ids where all have one of their own; else by their XML ids, else by their numbers. */
function named(rules: readonly (DmnRule & { readonly annotatedId: string | undefined })[]): DmnRule[] {
  const annotated = rules.map(({ annotatedId }) => annotatedId);
  const useAnnotated =
    annotated.every((one) => one !== undefined) && new Set(annotated).size === annotated.length;
  const seen = new Set<string>();
  return rules.map(({ annotatedId, ...rule }, index) => {
    const id = (useAnnotated ? annotatedId : rule.id) ?? '';
    const own = id === '' || seen.has(id) ? String(index + 1) : id;
    seen.add(own);
    return { ...rule, id: own };
  });
}

function hitPolicyOf(element: XmlElement): HitPolicy {
  const written = element.attributes.get('hitPolicy') ?? 'UNIQUE';
  const policy = hitPolicies.find((one) => one === written.trim().toLowerCase());
  if (policy) return policy;
  throw new UnusableFile(
    element.span,
    `“${written}” is no hit policy.`,
    `It is one of ${hitPolicies.map((one) => one.toUpperCase()).join(', ')}.`,
  );
}

function aggregationOf(element: XmlElement): Aggregation | undefined {
  const written = element.attributes.get('aggregation');
  if (written === undefined) return undefined;
  const found = aggregations.find((one) => one === written.trim().toLowerCase());
  if (found) return found;
  throw new UnusableFile(
    element.span,
    `“${written}” is no aggregation.`,
    `It is one of ${aggregations.map((one) => one.toUpperCase()).join(', ')}.`,
  );
}

/** A default that is empty, or no more than a dash, is none. */
function emptyAside(text: FeelText): FeelText | undefined {
  return text.text === '' || text.text === '-' ? undefined : text;
}

function assertApart(outputs: readonly DmnOutput[]): void {
  const seen = new Set<string>();
  for (const { name, span } of outputs) {
    if (seen.has(name)) throw new UnusableFile(span, `Two outputs are called “${name}”.`, 'Rename one.');
    seen.add(name);
  }
}

/** Whether a test says something of values that are not known, texts in quotes aside. */
function namesNull(test: string): boolean {
  return /\bnull\b/.test(test.replace(/"(?:[^"\\]|\\.)*"/g, ''));
}
