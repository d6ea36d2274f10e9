/** A DMN file → what it decides, and what in it cannot be decided here. */

import { type FileFault, UnusableFile } from '../file-fault.ts';
import { type Aggregation, aggregations, type HitPolicy, hitPolicies } from '../table.ts';
import { literalsOf } from './feel-text.ts';
import { FeelTypes, narrowed, withOwn } from './feel-type.ts';
import {
  type DmnColumn,
  type DmnDecision,
  type DmnExpression,
  type DmnFile,
  type DmnInput,
  type DmnOutput,
  type DmnRule,
  type DmnTable,
  type FeelText,
  namespaces,
  ownNamespace,
  ruleIdColumn,
} from './model.ts';
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
  readonly #refused: (FileFault & { id: string; name: string })[] = [];

  constructor(root: XmlElement) {
    this.#root = root;
    this.#types = new FeelTypes(root.children.filter(({ name }) => name === 'itemDefinition'));
  }

  file(version: DmnFile['version']): DmnFile {
    const inputs: DmnInput[] = [];
    const decisions: DmnDecision[] = [];
    for (const element of this.#root.children) {
      if (element.name === 'inputData') inputs.push(this.#input(element));
      else if (element.name === 'decision') decisions.push(...this.#decision(element));
      else if (element.namespace === this.#root.namespace && !silent.has(element.name)) {
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
    const requires: { id: string; span: FeelText['span'] }[] = [];
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
    if (table) return this.#table(table, name);
    const expression = only(element, 'literalExpression');
    if (expression) {
      this.#assertFeel(expression);
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

  /** Other languages than FEEL would be read as something they are not. */
  #assertFeel(element: XmlElement): void {
    const language =
      element.attributes.get('expressionLanguage') ?? this.#root.attributes.get('expressionLanguage');
    if (language === undefined || /\bs?-?feel\b|\/FEEL\/?$/i.test(language)) return;
    throw new UnusableFile(
      element.span,
      `This is written in “${language}”; only FEEL is read.`,
      'Write it in FEEL, the language of DMN.',
    );
  }

  #table(element: XmlElement, name: string): DmnTable {
    const inputs = all(element, 'input').map((one) => this.#column(one));
    const outputs = all(element, 'output').map((one, _, { length }) => this.#output(one, length, name));
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
      mayBeMissing:
        column.mayBeMissing || rules.some(({ tests }) => /\bnull\b/.test(tests[index]?.text ?? '')),
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
    this.#assertFeel(expression);
    const values = only(element, 'inputValues');
    const type = narrowed(this.#types.named(expression.attributes.get('typeRef')), values);
    return {
      label: element.attributes.get('label') ?? text.text,
      expression: text,
      type: withOwn(type, element),
      mayBeMissing:
        element.foreign.get(`${ownNamespace} mayBeMissing`) === 'true' ||
        /\bnull\b/.test(values ? textOf(values).text : ''),
    };
  }

  #output(element: XmlElement, count: number, decision: string): DmnOutput {
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
    const type = withOwn(narrowed(this.#types.named(element.attributes.get('typeRef')), values), element);
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
    for (const one of [...tests, ...results]) this.#assertFeel(one);
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

/** FEEL takes blanks in names for one (DMN 1.3, 10.3.1.4). */
function normalName(name: string): string {
  return name.trim().replace(/\s+/g, ' ');
}

function nameOf(element: XmlElement): string {
  return element.attributes.get('name')?.trim() ?? element.attributes.get('id') ?? '';
}

function all(element: XmlElement, name: string): XmlElement[] {
  return element.children.filter((one) => one.name === name && one.namespace === element.namespace);
}

function only(element: XmlElement, name: string): XmlElement | undefined {
  return all(element, name)[0];
}

function textOf(element: XmlElement): FeelText {
  const text = only(element, 'text');
  return text ? { text: text.text.trim(), span: text.textSpan } : { text: '', span: element.span };
}

function counted(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? '' : 's'}`;
}
