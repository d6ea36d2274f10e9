/** What a directive in prose stands for, or what is wrong with it. */
import type { Answers } from '../answers.ts';
import {
  attributeOf,
  type DirectiveNode,
  directiveNames,
  type Entry,
  knownName,
  labelWords,
  nearest,
  plainText,
} from '../base/index.ts';
import {
  type Characteristic,
  type CharacteristicName,
  characteristicNames,
  formatQuantity,
  formatValue,
  type ProfileOutput,
  valuesNamed,
  valueUnder,
  type WantedConditions,
} from '../measure/index.ts';
import { limitNames, limitText } from './limits.ts';

/** What is wrong with a directive, and which part of it; the whole where `at` is absent. */
export interface Problem {
  readonly message: string;
  readonly help: string;
  readonly at?: { readonly word: string } | { readonly attribute: string };
}

export type Resolution =
  | {
      readonly to: 'value';
      readonly profile: Entry<'profiles'>;
      readonly output: ProfileOutput;
      readonly value: Characteristic;
      /** With its uncertainty, or alone, as the directive asks. */
      readonly text: string;
    }
  | { readonly to: 'code'; readonly profile: Entry<'profiles'> }
  | { readonly to: 'cited'; readonly source: Entry<'sources'> }
  | { readonly to: 'limit'; readonly text: string }
  /** To nothing. Without a problem where another finding says why: an entry that is not there. */
  | { readonly to: 'nothing'; readonly problem: Problem | undefined };

/** Resolves a directive against everything the content comes to. */
export function resolveDirective(answers: Answers, node: DirectiveNode): Resolution {
  const name = knownName(node);
  if (!name) return nothing(unknownDirective(node));
  const stray = strayAttribute(node, attributesOf[name]);
  if (stray) return nothing(stray);
  if (name === 'value') return resolveValue(answers, node);
  if (name === 'code') return resolveCode(answers, node);
  return name === 'cited' ? resolveCited(answers, node) : resolveLimit(node);
}

const attributesOf = {
  value: ['step', 'load', 'supply', 'signal', 'form'],
  code: [],
  cited: ['source'],
  limit: [],
} as const;

const examples = {
  value: ':value[family/profile clean-volts]',
  code: ':code[family/profile]',
  cited: ':cited[2.83 V]{source=name-of-the-source}',
  limit: ':limit[clean-distortion]',
} as const;

function nothing(problem?: Problem): Resolution {
  return { to: 'nothing', problem };
}

function unknownDirective(node: DirectiveNode): Problem {
  const isKnown = directiveNames.some((name) => name === node.name);
  if (isKnown) {
    return {
      message: `“${node.name}” stands inside a sentence, behind one colon.`,
      help: `Write it as ${examples[node.name as keyof typeof examples]}, on the line it belongs to.`,
    };
  }
  const guess = node.type === 'textDirective' ? nearest(node.name, directiveNames) : undefined;
  return {
    message: `There is no directive “${node.name}”, so this would be left out of the page.`,
    help: guess
      ? `Did you mean “${guess}”? Write it as ${examples[guess as keyof typeof examples]}.`
      : `The directives are: ${directiveNames.join(', ')}. If the colon is part of the text, write \\: for it.`,
  };
}

function strayAttribute(node: DirectiveNode, known: readonly string[]): Problem | undefined {
  for (const [attribute, value] of Object.entries(node.attributes ?? {})) {
    const at = { attribute };
    if (!known.includes(attribute)) {
      const guess = nearest(attribute, known);
      const list =
        known.length > 0
          ? `The attributes known here are: ${known.join(', ')}.`
          : 'It has no attributes: take out the part in curly brackets.';
      return {
        message: `“${attribute}” is not an attribute of “${node.name}”.`,
        help: guess ? `Did you mean “${guess}”?` : list,
        at,
      };
    }
    if ((value ?? '').trim() === '') {
      return { message: `The attribute “${attribute}” is empty.`, help: 'Fill it in, or take it out.', at };
    }
  }
  return undefined;
}

function resolveValue(answers: Answers, node: DirectiveNode): Resolution {
  const [id, name, ...more] = labelWords(node);
  if (id === undefined) return nothing(noProfile(node));
  const profile = answers.base.profiles.get(id);
  if (!profile) return nothing();
  if (name === undefined) {
    return nothing({
      message: `This names the profile “${id}” and none of its values.`,
      help: `Add the name of a value: :value[${id} clean-volts]. The values are: ${characteristicNames.join(', ')}.`,
    });
  }
  const known = characteristicNames.find((one) => one === name);
  if (!known) {
    const guess = nearest(name, characteristicNames);
    return nothing({
      message: `There is no value called “${name}”.`,
      help: guess ? `Did you mean “${guess}”?` : `The values are: ${characteristicNames.join(', ')}.`,
      at: { word: name },
    });
  }
  if (more[0] !== undefined) {
    return nothing({
      message: `“${more[0]}” is one word too many: between the square brackets stand a profile and one value.`,
      help: `Conditions stand in curly brackets: :value[${id} ${known}]{step=12}.`,
      at: { word: more[0] },
    });
  }
  const wrong = wrongNumber(node) ?? wrongForm(node);
  if (wrong) return nothing(wrong);
  const output = answers.outputs.get(id);
  if (!output) return nothing();
  const value = valueUnder(output, known, wantedBy(node));
  if (!value) return nothing(readingsAreBroken(answers, id) ? undefined : notKnown(output, known, node));
  const text = attributeOf(node, 'form') === 'value' ? formatValue(value) : formatQuantity(value);
  return { to: 'value', profile, output, value, text };
}

const forms = ['value', 'with-uncertainty'] as const;

function wrongForm(node: DirectiveNode): Problem | undefined {
  const form = attributeOf(node, 'form');
  if (form === undefined || forms.some((known) => known === form)) return undefined;
  const guess = nearest(form, forms);
  return {
    message: `“form” cannot be “${form}”.`,
    help: `${guess ? `Did you mean “${guess}”? ` : ''}It is one of: ${forms.join(', ')}.`,
    at: { attribute: 'form' },
  };
}

const numberAttributes = ['step', 'load', 'supply', 'signal'] as const;
const numberExamples = {
  step: 'step=12',
  load: 'load=4, in ohms',
  supply: 'supply=14.4, in volts',
  signal: 'signal=0, in dBFS',
} as const;

function wrongNumber(node: DirectiveNode): Problem | undefined {
  const attribute = numberAttributes.find((name) => {
    const text = attributeOf(node, name);
    return text !== undefined && !/^-?\d+(\.\d+)?$/.test(text);
  });
  if (!attribute) return undefined;
  return {
    message: `“${attribute}” must be a number, and this is “${attributeOf(node, attribute) ?? ''}”.`,
    help: `Write the number alone: ${numberExamples[attribute]}.`,
    at: { attribute },
  };
}

function wantedBy(node: DirectiveNode): WantedConditions {
  const number = (name: string): number | undefined => {
    const text = attributeOf(node, name);
    return text === undefined ? undefined : Number(text);
  };
  return {
    step: number('step'),
    loadOhms: number('load'),
    supplyVolts: number('supply'),
    signalDbfs: number('signal'),
  };
}

/** A value may be missing only because a session that measured the profile cannot be read; that is said there. */
function readingsAreBroken({ base }: Answers, profile: string): boolean {
  return [...base.readings].some(
    ([session, table]) => !base.outputs.has(session) && table.profiles.includes(profile),
  );
}

function notKnown(output: ProfileOutput, name: CharacteristicName, node: DirectiveNode): Problem {
  const values = valuesNamed(output, name);
  const asked = numberAttributes.filter((one) => attributeOf(node, one) !== undefined);
  if (values.length > 0) {
    const found = asked.map((one) => `${one}=${attributeOf(node, one) ?? ''}`).join(' ');
    const known = values.map(({ conditions }) => {
      const parts = {
        step: conditions.step,
        load: conditions.loadOhms,
        supply: conditions.supplyVolts,
        signal: conditions.signalDbfs,
      };
      const told = asked.flatMap((one) => (parts[one] === undefined ? [] : [`${one}=${parts[one]}`]));
      return told.length > 0 ? told.join(' ') : 'any conditions: leave out what is in curly brackets';
    });
    return {
      message: `The readings of “${output.profile}” give no ${name} at ${found}.`,
      help: `They give it at ${[...new Set(known)].join('; ')}.`,
      ...(asked.length === 1 && asked[0] && { at: { attribute: asked[0] } }),
    };
  }
  const reason = output.missing.find((one) => one.name === name)?.reason ?? 'it does not apply';
  return {
    message: `“${name}” is not known for “${output.profile}”: ${reason}.`,
    help: 'Name a value that its page shows, or have it measured first.',
    at: { word: name },
  };
}

function noProfile(node: DirectiveNode): Problem {
  return {
    message: 'This names no profile.',
    help: `Write the profile’s path below profiles/ between square brackets: ${examples[node.name === 'code' ? 'code' : 'value']}.`,
  };
}

function resolveCode(answers: Answers, node: DirectiveNode): Resolution {
  const [id, more] = labelWords(node);
  if (id === undefined) return nothing(noProfile(node));
  const profile = answers.base.profiles.get(id);
  if (!profile) return nothing();
  if (more !== undefined) {
    return nothing({
      message: `“${more}” is one word too many: between the square brackets stands a profile alone.`,
      help: `For a value of it, write :value[${id} ${characteristicNames.find((name) => name === more) ?? 'clean-volts'}].`,
      at: { word: more },
    });
  }
  return { to: 'code', profile };
}

function resolveCited(answers: Answers, node: DirectiveNode): Resolution {
  const id = attributeOf(node, 'source');
  if (plainText(node).trim() === '') {
    return nothing({
      message: 'This cites a source and says nothing.',
      help: `Write the words or the number between square brackets: ${examples.cited}.`,
    });
  }
  if (id === undefined) {
    return nothing({
      message: `“${plainText(node).trim()}” is cited without a source.`,
      help: `Add the source’s path below sources/ in curly brackets: ${examples.cited}.`,
    });
  }
  const source = answers.base.sources.get(id);
  return source ? { to: 'cited', source } : nothing();
}

function resolveLimit(node: DirectiveNode): Resolution {
  const name = plainText(node).trim();
  const text = limitText(name);
  if (text !== undefined) return { to: 'limit', text };
  if (name === '') {
    return nothing({ message: 'This names no limit.', help: `Write one of: ${limitNames.join(', ')}.` });
  }
  const guess = nearest(name, limitNames);
  return nothing({
    message: `There is no limit called “${name}”.`,
    help: `${guess ? `Did you mean “${guess}”? ` : ''}It is one of: ${limitNames.join(', ')}.`,
  });
}
