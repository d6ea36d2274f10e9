import type { Nodes } from 'mdast';
import type { Answers } from '../../answers.ts';
import {
  type Entry,
  type Finding,
  nearest,
  type Place,
  placeOfAddress,
  placeOfNode,
  plainText,
  type TextFile,
  targetOf,
  walk,
} from '../../base/index.ts';
import { headingsOf, sectionIds } from '../../prose/index.ts';
import type { Rule } from '../rule.ts';

type ProseEntry = Entry<'families'> | Entry<'guides'>;

export const proseLinks: Rule = {
  id: 'prose-links',
  title: 'Links, images and headings in prose are sound, and nothing in it is left out of the page.',
  explanation:
    'A link leads to another entry by the path of its file (../families/brasslight.md) or of its page (/units/brasslight/), to a heading of its page (#set-the-gain), or out of the site by https, mailto or tel; it has words to follow. There are no images: a content folder holds no pictures, and pages ask no other site for any. Headings begin at the second level, because the title is the first, skip no level, are not empty and do not repeat; then the page can be listened to and linked into. HTML tags are left out of the page, so they are named here. That an entry which is linked to exists is checked by dangling-link.',
  severity: 'error',
  examples: [
    {
      title: 'a link to a page that is not there',
      file: 'guides/reading-a-code.md',
      good: 'not a line of the list.',
      bad: 'not [a line](/wiring/) of the list.',
      foundAt: '/wiring/',
    },
    {
      title: 'a link to a heading that is not there',
      file: 'guides/reading-a-code.md',
      good: 'not a line of the list.',
      bad: 'not [a line](#what-to-look-for) of the list.',
      foundAt: '#what-to-look-for',
    },
    {
      title: 'an address without encryption',
      file: 'guides/reading-a-code.md',
      good: 'not a line of the list.',
      bad: 'not [a line](http://example.org/) of the list.',
      foundAt: 'http://example.org/',
    },
    {
      title: 'an image',
      file: 'guides/reading-a-code.md',
      good: 'not a line of the list.',
      bad: 'as here: ![the screen](https://example.org/screen.png)',
      foundAt: '![the screen](https://example.org/screen.png)',
    },
    {
      title: 'a level of headings skipped',
      file: 'families/fellside.md',
      good: 'No knob.\n',
      bad: 'No knob.\n\n#### The glass\n\nIt is dark.\n',
      foundAt: '#### The glass',
    },
  ],
  check: ({ answers }) =>
    [...answers.base.families.values(), ...answers.base.guides.values()].flatMap((entry) => [
      ...linkFindings(answers, entry),
      ...headingFindings(entry),
    ]),
};

function finding(place: Place, message: string, help: string): Finding {
  return { rule: 'prose-links', severity: 'error', place, message, help, related: [] };
}

function linkFindings(answers: Answers, entry: ProseEntry): Finding[] {
  const { body, source } = entry;
  if (!body || !source) return [];
  const findings: Finding[] = [];
  const add = (found: Finding | undefined): void => {
    if (found) findings.push(found);
  };
  walk(body, (node) => {
    if (node.type === 'link' || node.type === 'definition') add(addressFinding(answers, entry, source, node));
    if ((node.type === 'link' || node.type === 'linkReference') && isWordless(node)) {
      add(
        finding(
          placeOfNode(source, node),
          'This link has no words to follow.',
          'Write them between the square brackets.',
        ),
      );
    }
    if (node.type === 'image' || node.type === 'imageReference') add(imageFinding(source, node));
    if (node.type === 'html' && !/^\s*<!--/.test(node.value)) {
      add(
        finding(
          placeOfNode(source, node),
          `HTML is left out of the page: ${node.value.split('\n', 1)[0] ?? ''}`,
          'Write it in Markdown; for a sign like < put a backslash before it.',
        ),
      );
    }
  });
  return findings;
}

/** A directive in a link has words, even where it is all there is. */
function isWordless(node: Nodes): boolean {
  if (plainText(node).trim() !== '') return false;
  return !('children' in node && node.children.some((child) => child.type === 'textDirective'));
}

const schemes = ['https', 'mailto', 'tel'] as const;

function addressFinding(
  answers: Answers,
  entry: ProseEntry,
  source: TextFile,
  node: Nodes & { readonly url: string },
): Finding | undefined {
  const place = placeOfAddress(source, node);
  const target = targetOf(node.url, entry.file);
  if (target.to === 'anchor') return anchorFinding(entry, target.id, place);
  if (target.to === 'entry' && target.hash !== '') {
    const { kind, id } = target;
    const other = kind === 'families' || kind === 'guides' ? answers.base[kind].get(id) : undefined;
    return other && anchorFinding(other as ProseEntry, target.hash, place);
  }
  if (target.to === 'nothing') {
    return node.url.trim() === ''
      ? finding(
          place,
          'This link leads nowhere: its address is empty.',
          'Write the address between the round brackets.',
        )
      : finding(
          place,
          `There is no page “${node.url}”.`,
          'Write the path of the entry’s file from here, such as ../families/name.md, or of its page from the top of the site, such as /units/name/.',
        );
  }
  if (target.to !== 'outside' || schemes.some((known) => known === target.scheme)) return undefined;
  if (target.scheme === 'http' || target.scheme === '') {
    const secure = node.url.replace(/^(?:http:)?\/\//i, 'https://');
    return finding(place, 'This address is not encrypted.', `Write ${secure}, if it can be reached so.`);
  }
  return finding(
    place,
    `Links of the kind “${target.scheme}:” are left out of the page.`,
    `Use one of: ${schemes.map((known) => `${known}:`).join(', ')}.`,
  );
}

function anchorFinding(entry: ProseEntry, id: string, place: Place): Finding | undefined {
  if (!entry.body) return undefined;
  const known = [
    ...headingsOf(entry.body, entry.kind).map((heading) => heading.id),
    ...sectionIds[entry.kind],
  ];
  if (known.includes(id)) return undefined;
  const guess = nearest(id, known);
  return finding(
    place,
    `There is no heading “#${id}” on the page of “${entry.id}”.`,
    guess
      ? `Did you mean “#${guess}”?`
      : `The headings there are: ${known.map((one) => `#${one}`).join(', ')}.`,
  );
}

function imageFinding(source: TextFile, node: Nodes): Finding {
  return finding(
    placeOfNode(source, node),
    'Images are left out of the page: a content folder holds none, and pages ask no other site for any.',
    'Say in words what it shows, or link to it: [the screen](https://…).',
  );
}

function headingFindings(entry: ProseEntry): Finding[] {
  const { body, source } = entry;
  if (!body || !source) return [];
  const findings: Finding[] = [];
  const seen = new Map<string, Place>();
  let before = 1;
  for (const { node, text } of headingsOf(body, entry.kind)) {
    const place = placeOfNode(source, node);
    const twin = seen.get(text.toLowerCase());
    const skips = node.depth > before + 1;
    if (text === '') {
      findings.push(finding(place, 'This heading is empty.', 'Write it, or take the line out.'));
    } else if (node.depth === 1) {
      findings.push(
        finding(
          place,
          `“${text}” is a heading of the first level, which is the title’s.`,
          `Begin with two signs: ## ${text}`,
        ),
      );
    } else if (skips) {
      findings.push(
        finding(
          place,
          `“${text}” is a heading of level ${node.depth} below one of level ${before}.`,
          `Take one level after the other: ${'#'.repeat(before + 1)} ${text}`,
        ),
      );
    } else if (twin) {
      findings.push({
        ...finding(
          place,
          `A heading “${text}” stands here already.`,
          'Give one of them other words, so that a link can tell them apart.',
        ),
        related: [{ place: twin, message: 'The other one.' }],
      });
    }
    if (text !== '' && !twin) seen.set(text.toLowerCase(), place);
    before = Math.max(node.depth, 2);
  }
  return findings;
}
