/** Decision tables as DMN 1.3 XML, which every later version’s tools read too. */
import { DmnModdle, type ModdleElement } from 'dmn-moddle';
import { CannotExport } from '../file-fault.ts';
import { givesList } from '../hit-policy.ts';
import type { Table, TableInput, TableOutput, ValueType } from '../table.ts';
import { addDiagram, type Drawn } from './diagram.ts';
import { allowedText, feelLiteral } from './feel-text.ts';
import { ownNamespace, ruleIdColumn, saysColumn } from './model.ts';
import { feelName, renamed, xmlId } from './names.ts';
import { valuesByPriority } from './priorities.ts';

export interface DmnExport {
  /** Becomes the name of the decision, as {@link feelName} writes it. */
  readonly id: string;
  /** Becomes its label. */
  readonly name: string;
  readonly question?: string | undefined;
  readonly table: Table;
  /** What rules say, by rule id: becomes the annotation “says”. */
  readonly says?: Readonly<Record<string, string | undefined>>;
}

/**
 * The DMN 1.3 file that holds these tables, each as a decision with its inputs as input data. Tables share the input
 * data of an id; two tables that mean different things by one id cannot be in one file.
 * @throws CannotExport where they do, and where answers that need a priority have none.
 */
export async function exportDmn(tables: readonly DmnExport[], name = 'Decision tables'): Promise<string> {
  const moddle = new DmnModdle();
  const definitions = moddle.create('dmn:Definitions', {
    id: 'definitions',
    name,
    namespace: ownNamespace,
    exporter: 'Readback',
  });
  definitions.set('xmlns:readback', ownNamespace);
  const inputs = new Map<string, { type: ValueType; element: ModdleElement }>();
  for (const { id, table } of tables) {
    for (const input of table.inputs) {
      const before = inputs.get(input.id);
      if (before && JSON.stringify(before.type) !== JSON.stringify(input.type)) {
        throw new CannotExport(
          `“${input.id}” is not of one type in all tables: ${id} has it otherwise than one before it.`,
          'Export these tables to files of their own.',
        );
      }
      if (!before) inputs.set(input.id, { type: input.type, element: inputData(moddle, input) });
    }
  }
  const decisions = tables.map((one) => decision(moddle, one));
  const elements = [...[...inputs.values()].map(({ element }) => element), ...decisions];
  definitions.set('drgElement', elements);
  addDiagram(
    moddle,
    definitions,
    tables.flatMap(({ table }, index) => drawn(table, inputs, decisions[index])),
  );
  return `${(await moddle.toXML(definitions, { format: true })).xml.trim()}\n`;
}

const decisionId = (id: string): string => xmlId('decision', id);
const inputId = (id: string): string => xmlId('input', id);
const requirementId = (table: string, input: TableInput): string => xmlId('needs', table, input.id);

function drawn(
  { inputs: needed }: Table,
  inputs: ReadonlyMap<string, { readonly element: ModdleElement }>,
  element: ModdleElement | undefined,
): Drawn[] {
  if (!element) return [];
  const requirements = element.get('informationRequirement') as readonly ModdleElement[];
  const requires = needed.flatMap(({ id }, index) => {
    const [input, requirement] = [inputs.get(id)?.element, requirements[index]];
    return input && requirement ? [{ input, requirement }] : [];
  });
  return [{ decision: element, requires }];
}

function inputData(moddle: DmnModdle, input: TableInput): ModdleElement {
  const element = moddle.create('dmn:InputData', {
    id: inputId(input.id),
    name: feelName(input.id),
    label: input.label,
  });
  element.set(
    'variable',
    moddle.create('dmn:InformationItem', {
      id: xmlId('variable', input.id),
      name: feelName(input.id),
      typeRef: typeRefOf(input.type),
    }),
  );
  return element;
}

function decision(moddle: DmnModdle, { id, name, question, table, says = {} }: DmnExport): ModdleElement {
  const element = moddle.create('dmn:Decision', { id: decisionId(id), name: feelName(id), label: name });
  if (question !== undefined) element.set('question', question);
  const [only, ...more] = table.outputs;
  element.set(
    'variable',
    moddle.create('dmn:InformationItem', {
      id: xmlId('result', id),
      name: feelName(id),
      ...(only && more.length === 0 && !givesList(table) ? { typeRef: typeRefOf(only.type) } : {}),
    }),
  );
  element.set(
    'informationRequirement',
    table.inputs.map((input) =>
      moddle.create('dmn:InformationRequirement', {
        id: requirementId(id, input),
        requiredInput: moddle.create('dmn:DMNElementReference', { href: `#${inputId(input.id)}` }),
      }),
    ),
  );
  element.set('decisionLogic', decisionTable(moddle, id, table, says));
  return element;
}

function decisionTable(
  moddle: DmnModdle,
  id: string,
  table: Table,
  says: Readonly<Record<string, string | undefined>>,
): ModdleElement {
  const names = new Map(table.inputs.map((input) => [input.id, feelName(input.id)] as const));
  const text = (type: string, content: string, more: object = {}): ModdleElement =>
    moddle.create(type, { ...more, text: content });
  const anySays = table.rules.some((rule) => says[rule.id] !== undefined);
  const rules = table.rules.map((rule) =>
    moddle.create('dmn:DecisionRule', {
      id: xmlId('rule', id, rule.id),
      inputEntry: rule.cells.map((cell, index) =>
        text('dmn:UnaryTests', renamed(cell.text, names), {
          id: xmlId('test', id, rule.id, String(index + 1)),
        }),
      ),
      outputEntry: rule.results.map((value, index) =>
        text('dmn:LiteralExpression', feelLiteral(value, table.outputs[index]?.type ?? { kind: 'text' }), {
          id: xmlId('result', id, rule.id, String(index + 1)),
        }),
      ),
      annotationEntry: [rule.id, ...(anySays ? [says[rule.id] ?? ''] : [])].map((content) =>
        text('dmn:RuleAnnotation', content),
      ),
    }),
  );
  return moddle.create('dmn:DecisionTable', {
    id: xmlId('table', id),
    hitPolicy: table.hitPolicy.toUpperCase(),
    ...(table.aggregation === undefined ? {} : { aggregation: table.aggregation.toUpperCase() }),
    input: table.inputs.map((input) => inputClause(moddle, id, input)),
    output: table.outputs.map((output) => outputClause(moddle, id, table, output)),
    annotation: [ruleIdColumn, ...(anySays ? [saysColumn] : [])].map((column) =>
      moddle.create('dmn:RuleAnnotationClause', { name: column }),
    ),
    rule: rules,
  });
}

function inputClause(moddle: DmnModdle, table: string, input: TableInput): ModdleElement {
  const element = moddle.create('dmn:InputClause', {
    id: xmlId('column', table, input.id),
    label: input.label,
    inputExpression: moddle.create('dmn:LiteralExpression', {
      id: xmlId('expression', table, input.id),
      typeRef: typeRefOf(input.type),
      text: feelName(input.id),
    }),
  });
  const allowed = allowedText(input.type);
  if (allowed !== undefined) {
    element.set(
      'inputValues',
      moddle.create('dmn:UnaryTests', { id: xmlId('values', table, input.id), text: allowed }),
    );
  }
  setOwn(element, input.type);
  if (input.mayBeMissing) element.set('readback:mayBeMissing', 'true');
  return element;
}

function outputClause(moddle: DmnModdle, id: string, table: Table, output: TableOutput): ModdleElement {
  const element = moddle.create('dmn:OutputClause', {
    id: xmlId('answer', id, output.id),
    label: output.label,
    name: feelName(output.id),
    typeRef: typeRefOf(output.type),
  });
  const allowed = outputValues(output, table);
  if (allowed !== undefined) {
    element.set(
      'outputValues',
      moddle.create('dmn:UnaryTests', { id: xmlId('answers', id, output.id), text: allowed }),
    );
  }
  if (output.otherwise !== undefined) {
    element.set(
      'defaultOutputEntry',
      moddle.create('dmn:LiteralExpression', {
        id: xmlId('otherwise', id, output.id),
        text: feelLiteral(output.otherwise, output.type),
      }),
    );
  }
  setOwn(element, output.type);
  return element;
}

/** In the order of their priority, highest first (DMN 1.3, 8.2.10). */
function outputValues({ label, type, priorities }: TableOutput, { hitPolicy }: Table): string | undefined {
  const orders = hitPolicy === 'priority' || hitPolicy === 'output order';
  if (type.kind === 'choice' && orders) {
    return allowedText({ kind: 'choice', values: valuesByPriority(label, type.values, priorities) });
  }
  if (!orders || priorities.length === 0) return allowedText(type);
  return priorities.map((one) => feelLiteral(one, type)).join(', ');
}

/** What DMN has no place for. */
function setOwn(element: ModdleElement, type: ValueType): void {
  if (type.kind !== 'number') return;
  if (type.unit !== undefined) element.set('readback:unit', type.unit);
  if (type.whole) element.set('readback:whole', 'true');
}

function typeRefOf({ kind }: ValueType): string {
  if (kind === 'number' || kind === 'date') return kind;
  return kind === 'yes-no' ? 'boolean' : 'string';
}
