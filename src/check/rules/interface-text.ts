import type { Entry, Finding } from '../../base/index.ts';
import { nearest } from '../../base/index.ts';
import { type TextFault, textFaults } from '../../words/faults.ts';
import type { Texts } from '../../words/index.ts';
import { interfaceTexts, shippedLanguage, shippedLanguages } from '../../words/shipped.ts';
import type { Rule } from '../rule.ts';

export const interfaceText: Rule = {
  id: 'interface-text',
  title: 'A site says every text of its pages in each of its languages.',
  explanation:
    'What the pages say beside the entries (labels, buttons, sentences of verdicts) is there in English and Spanish. A further language of site.yaml needs all of these texts in words/, or riders find pages half in one language and half in another; `readback words TAG` lists what is missing. In a file for a shipped language stand only the texts the shop words in its own way. What stands in braces is filled in with values and has to stay, as have marks such as <link>; a text that counts has a form for each plural of the language.',
  severity: 'error',
  examples: [
    {
      title: 'a language nothing is said in',
      file: 'site.yaml',
      good: 'colours:',
      bad: 'languages: [en, nl]\ncolours:',
      foundAt: 'nl',
    },
    {
      title: 'a misspelt English text',
      file: 'words/es.yaml',
      good: '',
      bad: 'name: Español\ntexts:\n  "All cods": "Códigos"\n',
      foundAt: '"All cods"',
    },
    {
      title: 'a language with texts missing',
      file: 'words/nl.yaml',
      good: '',
      bad: 'name: Nederlands\ntexts:\n  "All codes": "Alle codes"\n',
      foundAt: 'texts',
      also: [{ file: 'site.yaml', good: 'colours:', bad: 'languages: [en, nl]\ncolours:' }],
    },
  ],
  check: ({ answers: { base } }) => [
    ...languagesWithoutTexts(base.site, new Set(base.words.keys())),
    ...[...base.words.values()].flatMap(faultsOfWords),
  ],
};

function languagesWithoutTexts(site: Entry<'site'> | undefined, own: ReadonlySet<string>): Finding[] {
  return (site?.data.languages ?? []).flatMap((tag, index): Finding[] => {
    if (!site || shippedLanguage(tag) || own.has(tag.toLowerCase())) return [];
    const there = shippedLanguages.map((one) => one.tag).join(', ');
    return [
      finding(
        site.place(['languages', index]),
        `The texts of the pages are not there in “${tag}”.`,
        `Shipped are ${there}. “readback words ${tag}” writes the list to fill in, as words/${tag.toLowerCase()}.yaml.`,
      ),
    ];
  });
}

function faultsOfWords(words: Entry<'words'>): Finding[] {
  const shipped = shippedLanguage(words.id);
  const texts = words.data.texts as Texts;
  const faults = textFaults(interfaceTexts, texts, words.id);
  const missing = faults.filter(({ kind }) => kind === 'missing');
  const findings = faults
    .filter(({ kind }) => kind !== 'missing')
    .map((fault) => {
      const path = ['texts', fault.text];
      return finding(words.place(path, fault.kind === 'unknown' ? 'key' : 'value'), ...wordsOf(fault));
    });
  // What a shipped language does not say in the shop's words it says in its own.
  const [first] = missing;
  if (!first || shipped) return findings;
  return [
    ...findings,
    finding(
      words.place(['texts'], 'key'),
      missing.length === 1
        ? `A text is missing: “${first.text}”.`
        : `${missing.length} of ${interfaceTexts.size} texts are missing, such as “${first.text}”.`,
      `“readback words ${words.id}” lists them, to be copied into this file.`,
    ),
  ];
}

/** What is wrong with one text, and what to do. */
function wordsOf({ kind, text, needed }: TextFault): [message: string, help: string] {
  switch (kind) {
    case 'slots':
      return [
        needed.length === 0
          ? 'This text has something in braces that the English one has not.'
          : `This text does not have the same braces as the English one: ${needed.map((one) => `{${one}}`).join(', ')}.`,
        'Keep them as they are, at the place where the value belongs.',
      ];
    case 'marks':
      return [
        needed.length === 0
          ? 'This text marks a part that the English one does not mark.'
          : `This text does not mark the same parts as the English one: ${needed.map((one) => `<${one}>…</${one}>`).join(', ')}.`,
        'Put the marks around the words that mean the same.',
      ];
    case 'forms':
      return needed.length === 0
        ? ['This text counts nothing, and has one form only.', 'Write one text instead.']
        : [
            'This text counts something, and needs a form for each plural of the language.',
            `Write it as { ${needed.map((form) => `${form}: "…"`).join(', ')} }.`,
          ];
    default: {
      const guess = nearest(text, interfaceTexts.keys());
      return [
        `The pages say no such text as “${text}”.`,
        guess === undefined
          ? 'Copy the English text from the page, or take this line out.'
          : `Did you mean “${guess}”?`,
      ];
    }
  }
}

function finding(place: Finding['place'], message: string, help: string): Finding {
  return { rule: 'interface-text', severity: 'error', place, message, help, related: [] };
}
