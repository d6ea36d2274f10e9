/** `readback words TAG`: the texts of the interface that a language does not say yet, as a file to fill in. */
import { stringify } from 'yaml';
import { languageTag } from '../../../schemas/common.ts';
import type { WordsResult } from '../../../schemas/results/words.ts';
import { CannotRun, readBase } from '../../base/index.ts';
import { english } from '../../words/index.ts';
import { interfaceTexts, shippedLanguage } from '../../words/shipped.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, printJson } from '../command.ts';

/** 0 where nothing is missing, 1 where something is, 2 could not run. */
export async function words(
  tag: string,
  options: ContentOption & JsonOption,
  output: Output,
): Promise<number> {
  const parsed = languageTag.safeParse(tag);
  if (!parsed.success) {
    throw new CannotRun(`“${tag}” is not the name of a language.`, 'Give it as es, or pt-BR (IETF BCP 47).');
  }
  const { base } = await readBase(options.content);
  const own = base.words.get(tag.toLowerCase())?.data.texts ?? {};
  const said = { ...shippedLanguage(tag)?.texts, ...own };
  const isMissing = (text: string): boolean => tag !== english.tag && !(text in said);
  const missing = [...interfaceTexts].filter(([text]) => isMissing(text));
  if (options.json) {
    printJson(output, {
      language: tag,
      texts: interfaceTexts.size,
      missing: missing.map(([text, counts]) => ({ text, counts })),
    } satisfies WordsResult);
  } else if (missing.length === 0) {
    output.out(`Nothing is missing: all ${interfaceTexts.size} texts are there in “${tag}”.`);
  } else {
    output.out(listToFillIn(tag, missing, Object.keys(own).length === 0));
  }
  return missing.length === 0 ? exitCodes.ok : exitCodes.findings;
}

/** Commented out line by line: what is filled in is uncommented, the rest stays missing. */
function listToFillIn(tag: string, missing: readonly (readonly [string, boolean])[], isNew: boolean): string {
  const forms = new Intl.PluralRules(tag).resolvedOptions().pluralCategories;
  const head = isNew
    ? [
        `# words/${tag.toLowerCase()}.yaml in the content folder. Put the text between the last quotes, and take away the “# ” before the line.`,
        `name: ${new Intl.DisplayNames([tag], { type: 'language' }).of(tag) ?? tag}`,
        'texts:',
      ]
    : [`# Missing in words/${tag.toLowerCase()}.yaml: to be put below “texts:”.`];
  const lines = missing.map(([text, counts]) => {
    const key = stringify(text, { defaultStringType: 'QUOTE_DOUBLE', lineWidth: 0 })
      .trim()
      // A no-break space looks like any other.
      .replaceAll('\u00a0', '\\u00a0');
    const value = counts ? `{ ${forms.map((form) => `${form}: ""`).join(', ')} }` : '""';
    return `#  ${key}: ${value}`;
  });
  return [...head, ...lines].join('\n');
}
