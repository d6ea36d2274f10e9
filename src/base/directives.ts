/**
 * Directives in Markdown bodies: `:name[label]{attribute=value}`. What each of them means is said where it is
 * resolved; here they are only told apart from colons that are part of the text.
 */
import type { Nodes, Parents, Root } from 'mdast';
// Adds the directives to the kinds of node.
import type {} from 'remark-directive';

/** The directives prose can use. */
export const directiveNames = ['value', 'code', 'cited', 'limit'] as const;
export type DirectiveName = (typeof directiveNames)[number];

type TextDirective = Extract<Nodes, { type: 'textDirective' }>;
export type DirectiveNode = TextDirective | Extract<Nodes, { type: 'leafDirective' | 'containerDirective' }>;

export function isDirective(node: Nodes): node is DirectiveNode {
  return node.type === 'textDirective' || node.type === 'leafDirective' || node.type === 'containerDirective';
}

/** The name of a directive inside a sentence, where it is one of those known. */
export function knownName(node: DirectiveNode): DirectiveName | undefined {
  if (node.type !== 'textDirective') return undefined;
  return directiveNames.find((name) => name === node.name);
}

/** Every directive of a body, in the order of the text, those inside others included. */
export function directivesOf(body: Root): DirectiveNode[] {
  const found: DirectiveNode[] = [];
  walk(body, (node) => {
    if (isDirective(node)) found.push(node);
  });
  return found;
}

/** Calls `see` with every node below `root`, parents first. */
export function walk(root: Parents, see: (node: Nodes, parent: Parents) => void): void {
  for (const child of root.children) {
    see(child, root);
    if ('children' in child) walk(child, see);
  }
}

/** The words of a node as plain text, without its marks. */
export function plainText(node: Nodes): string {
  if ('value' in node && node.type !== 'html') return node.value;
  if (node.type === 'image' || node.type === 'imageReference') return node.alt ?? '';
  return 'children' in node ? node.children.map(plainText).join('') : '';
}

/** The words of a directive's label: `brasslight/8b0s-i5z` and `clean-volts`. */
export function labelWords(node: DirectiveNode): string[] {
  return plainText(node)
    .split(/\s+/)
    .filter((word) => word !== '');
}

/** The value of an attribute, without blanks round it; undefined where it is absent. */
export function attributeOf(node: DirectiveNode, name: string): string | undefined {
  const found = Object.entries(node.attributes ?? {}).find(([key]) => key === name);
  return found?.[1]?.trim();
}

/**
 * Puts back colons that were read as directives but are part of the text: the `:30` of 9:30. A directive has
 * a label or attributes, or bears a known name.
 */
export function withoutStrayColons(parent: Parents): void {
  const children = parent.children as Nodes[];
  children.forEach((child, index) => {
    if (child.type === 'textDirective' && isStray(child)) {
      children[index] = {
        type: 'text',
        value: `:${child.name}`,
        ...(child.position && { position: child.position }),
      };
    } else if ('children' in child) withoutStrayColons(child);
  });
}

function isStray(node: TextDirective): boolean {
  const { start, end } = node.position ?? {};
  const isBare = (end?.offset ?? 0) - (start?.offset ?? 0) === node.name.length + 1;
  return isBare && knownName(node) === undefined;
}
