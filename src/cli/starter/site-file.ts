/** The site.yaml a content repository begins with: every field explained, with invented values to replace. */
import { type Site, siteSchema } from '../../../schemas/index.ts';
import { entryTemplate } from '../entry-template.ts';

const site: Site = {
  name: 'Sample Audio Bench',
  tagline: 'What each factory tuning really puts out',
  about: 'We measure what head units feed amplifiers and speakers. Here is what we found.',
  notice: 'These entries are invented, to begin with. Wire nothing by them.',
  contact: { phone: '+00 000 555 0142', email: 'bench@sample.example', hours: 'Weekdays, 9 to 17 h' },
  address: 'https://help.sample.example',
  repository: 'https://git.sample.example/help',
  correctAt: 'https://git.sample.example/help/edit/main/content/{file}#L{line}',
  languages: ['en'],
  licence: {
    name: 'CC-BY-4.0',
    title: 'Creative Commons Attribution 4.0 International',
    address: 'https://creativecommons.org/licenses/by/4.0/',
  },
  colours: { accent: '#5a3a8a', accentDark: '#c8b0f0' },
};

/** What a shop has to decide on before it is shown: a number nobody answers would be worse than none. */
const leftOut = ['contact.phone', 'contact.email', 'repository', 'correctAt', 'languages', 'licence'];

export function siteFile(): string {
  const head = [
    '# Whose help section this is. Put your own values in place of these.',
    '# Fields behind a number sign may be left out; take the sign away to use them.',
  ];
  const fields = entryTemplate(siteSchema.shape, {
    valueOf: (path) => JSON.stringify(valueAt(path)),
    isLeftOut: (path) => leftOut.includes(path),
  });
  return `${[...head, ...fields].join('\n')}\n`;
}

/** The value at a path such as `contact.hours`; texts in double quotes, and lists of them, are the same in JSON and YAML. */
function valueAt(path: string): string | readonly string[] {
  let value: unknown = site;
  for (const name of path.split('.')) value = (value as Readonly<Record<string, unknown>>)[name];
  if (typeof value !== 'string' && !Array.isArray(value))
    throw new Error(`the starter says nothing of ${path} in site.yaml`);
  return value as string | readonly string[];
}
