/** `npm run words`: writes the list of the interface's texts, which languages are held against. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { tagTexts } from '../words/language.ts';
import { textsOf } from '../words/source-texts.ts';
import { projectRoot } from './project.ts';

/** The list as it is to stand in src/words/texts.json, sorted by text: whether each counts. */
export function textsJson(): string {
  const counts = new Map<string, boolean>();
  for (const folder of ['schemas', 'src']) {
    const files = readdirSync(join(projectRoot, folder), { recursive: true, encoding: 'utf8' });
    for (const file of files.filter((name) => /\.(ts|astro)$/.test(name) && !name.startsWith('words/'))) {
      const name = join(folder, file);
      for (const { text, one } of textsIn(name)) {
        const isCounting = one !== undefined;
        if (counts.get(text) === !isCounting) throw new Error(`${name}: “${text}” counts in one place only.`);
        counts.set(text, isCounting);
      }
    }
  }
  for (const tag of tagTexts) counts.delete(tag);
  const list = [...counts].sort(([a], [b]) => (a < b ? -1 : 1));
  return `${JSON.stringify(Object.fromEntries(list), undefined, 2)}\n`;
}

function textsIn(file: string): ReturnType<typeof textsOf> {
  try {
    return textsOf(readFileSync(join(projectRoot, file), 'utf8'));
  } catch (error) {
    throw new Error(`${file}: ${(error as Error).message}`);
  }
}

if (import.meta.main) writeFileSync(join(projectRoot, 'src/words/texts.json'), textsJson());
