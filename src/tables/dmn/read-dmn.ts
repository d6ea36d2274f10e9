/** A DMN file → what it decides, and what in it cannot be decided here. */

import { type FileFault, type Span, UnusableFile } from '../file-fault.ts';
import { nameOf, normalName, only, textOf } from './elements.ts';
import { FeelTypes } from './feel-type.ts';
import {
  type DmnDecision,
  type DmnExpression,
  type DmnFile,
  type DmnInput,
  type DmnTable,
  namespaces,
} from './model.ts';
import { TableReader } from './read-dmn-table.ts';
import { readXml, type XmlElement } from './xml-tree.ts';

/**
 * Reads DMN 1.2, 1.3, 1.4 and 1.5.
 * @throws UnusableFile where the text is no such file, or a table in it is not whole.
 */
export function readDmn(text: string): DmnFile {
  const root = readXml(text);
  const version = namespaces[root.namespace];
  if (root.name !== 'definitions' || version === undefined) throw notDmn(root);
  return new Reader(root).file(version);
}

function notDmn(root: XmlElement): UnusableFile {
  if (/\/DMN\/201[1-6]/i.test(root.namespace)) {
    return new UnusableFile(
      root.span,
      'This is a file of DMN 1.0 or 1.1, which is too old to be read.',
      'Open it in the program it comes from and save it as DMN 1.3.',
    );
  }
  if (root.name === 'definitions' && /omg\.org\/spec\/DMN/i.test(root.namespace)) {
    return new UnusableFile(
      root.span,
      `This is a file of a version of DMN that is not known here (${root.namespace}).`,
      'Save it as DMN 1.2, 1.3, 1.4 or 1.5.',
    );
  }
  return new UnusableFile(
    root.span,
    `This is no DMN file: it begins with <${root.name}>${root.namespace === '' ? ' in no namespace' : ` of ${root.namespace}`}.`,
    'A DMN file begins with <definitions xmlns="https://www.omg.org/spec/DMN/20191111/MODEL/">.',
  );
}

/** Elements of the requirements graph that decide nothing, and are passed over. */
const silent = new Set([
  'description',
  'extensionElements',
  'itemDefinition',
  'knowledgeSource',
  'textAnnotation',
  'association',
  'group',
  'elementCollection',
  'performanceIndicator',
  'organizationUnit',
  'artifact',
  'DMNDI',
]);

/** Ways to decide that are not carried out, in words. */
const otherLogic: Readonly<Record<string, string>> = {
  context: 'a boxed context',
  invocation: 'an invocation of a business knowledge model',
  functionDefinition: 'a function definition',
  relation: 'a relation',
  list: 'a boxed list',
  conditional: 'a boxed conditional',
  filter: 'a boxed filter',
  for: 'a boxed iteration (for)',
  some: 'a boxed quantified expression (some)',
  every: 'a boxed quantified expression (every)',
};

const refusedElements: Readonly<Record<string, string>> = {
  businessKnowledgeModel: 'a business knowledge model',
  decisionService: 'a decision service',
  import: 'an import of another file',
};

class Reader {
  readonly #root: XmlElement;
  readonly #types: FeelTypes;
  readonly #tables: TableReader;
  readonly #refused: (FileFault & { id: string; name: string })[] = [];

  constructor(root: XmlElement) {
    this.#root = root;
    this.#types = new FeelTypes(root.children.filter(({ name }) => name === 'itemDefinition'));
    this.#tables = new TableReader(root, this.#types);
  }

  file(version: DmnFile['version']): DmnFile {
    const inputs: DmnInput[] = [];
    const decisions: DmnDecision[] = [];
    for (const element of this.#root.children) {
      if (element.namespace !== this.#root.namespace || silent.has(element.name)) continue;
      if (element.name === 'inputData') inputs.push(this.#input(element));
      else if (element.name === 'decision') decisions.push(...this.#decision(element));
      else {
        const what = refusedElements[element.name] ?? `<${element.name}>`;
        this.#refuse(
          element,
          `“${nameOf(element)}” is ${what}, which is not read here.`,
          'Write what it does into the decisions that use it.',
        );
      }
    }
    assertUnlike([...inputs, ...decisions]);
    return { name: nameOf(this.#root), version, inputs, decisions, refused: this.#refused };
  }

  #refuse(element: XmlElement, message: string, help: string): void {
    const id = element.attributes.get('id') ?? '';
    this.#refused.push({ id, name: nameOf(element), span: element.span, message, help });
  }

  #input(element: XmlElement): DmnInput {
    const variable = only(element, 'variable');
    const name = normalName(variable?.attributes.get('name') ?? nameOf(element));
    return {
      id: element.attributes.get('id') ?? name,
      name,
      label: element.attributes.get('label') ?? name,
      type: this.#types.named(variable?.attributes.get('typeRef')),
      mayBeMissing: false,
      span: element.span,
    };
  }

  /** None where its logic is of a kind that is refused. */
  #decision(element: XmlElement): DmnDecision[] {
    const name = normalName(only(element, 'variable')?.attributes.get('name') ?? nameOf(element));
    const requires: { id: string; span: Span }[] = [];
    for (const requirement of element.children) {
      if (!/^(information|knowledge)Requirement$/.test(requirement.name)) continue;
      for (const { attributes, span } of requirement.children) {
        const href = attributes.get('href');
        if (href !== undefined) requires.push({ id: href.replace(/^#/, ''), span });
      }
    }
    const logic = this.#logic(element, name);
    if (!logic) return [];
    return [
      {
        id: element.attributes.get('id') ?? name,
        name,
        label: element.attributes.get('label') ?? nameOf(element),
        question: only(element, 'question')?.text.trim(),
        requires,
        logic,
        span: element.span,
      },
    ];
  }

  #logic(element: XmlElement, name: string): DmnTable | DmnExpression | undefined {
    const table = only(element, 'decisionTable');
    if (table) return this.#tables.table(table, name, only(element, 'variable')?.attributes.get('typeRef'));
    const expression = only(element, 'literalExpression');
    if (expression) {
      this.#tables.assertFeel(expression);
      return { kind: 'expression', ...textOf(expression) };
    }
    const other = element.children.find((one) => otherLogic[one.name] !== undefined);
    this.#refuse(
      element,
      other
        ? `“${name}” is decided by ${otherLogic[other.name]}, which is not carried out here.`
        : `“${name}” has neither a decision table nor an expression: there is nothing to decide it by.`,
      'Decide it by a decision table or a literal expression in FEEL.',
    );
    return undefined;
  }
}

function assertUnlike(elements: readonly (DmnInput | DmnDecision)[]): void {
  for (const key of ['id', 'name'] as const) {
    const seen = new Set<string>();
    for (const one of elements) {
      if (seen.has(one[key])) {
        const message = `Two inputs or decisions have the ${key} “${one[key]}”.`;
        throw new UnusableFile(one.span, message, `Give one of them another ${key}.`);
      }
      seen.add(one[key]);
    }
  }
}
