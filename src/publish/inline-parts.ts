/** What a finished page holds within itself that a browser runs: scripts, styles, and attributes that are either. */

export interface InlineParts {
  /** The text of each script that is run, as it stands between its tags; data in script elements is none. */
  readonly scripts: readonly string[];
  readonly styles: readonly string[];
  /** Style attributes and event handlers, as `tag attribute`: a strict policy refuses them. */
  readonly attributes: readonly string[];
}

const commentOrTag = /<!--[\s\S]*?-->|<([a-zA-Z][^\s/>]*)([^>"']*(?:"[^"]*"[^>"']*|'[^']*'[^>"']*)*)>/g;
const attribute = /([^\s"'=<>/]+)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'>]+)))?/g;
/** Of most tags this alone tells that no attribute of theirs is run. */
const mayRun = /(?:^|[\s"'/])(?:style|on)/i;
const runTypes = ['', 'module', 'text/javascript'];

/** Reads tag by tag, so that a tag within an attribute, a comment or a script is not taken for one. */
export function inlineParts(html: string): InlineParts {
  const scripts: string[] = [];
  const styles: string[] = [];
  const attributes: string[] = [];
  const tags = new RegExp(commentOrTag);
  for (let match = tags.exec(html); match; match = tags.exec(html)) {
    const [, name, text = ''] = match;
    if (name === undefined) continue;
    const isRun = /^(?:script|style)$/i.test(name);
    if (!isRun && !mayRun.test(text)) continue;
    const tag = name.toLowerCase();
    const given = attributesIn(text);
    for (const key of given.keys()) {
      if (key === 'style' || key.startsWith('on')) attributes.push(`${tag} ${key}`);
    }
    if (!isRun) continue;
    const begin = tags.lastIndex;
    const end = tag === 'style' ? /<\/style/gi : /<\/script/gi;
    end.lastIndex = begin;
    const within = html.slice(begin, end.exec(html)?.index);
    tags.lastIndex = begin + within.length;
    if (tag === 'style') styles.push(within);
    else if (!given.has('src') && runTypes.includes(given.get('type') ?? '')) scripts.push(within);
  }
  return { scripts, styles, attributes };
}

function attributesIn(text: string): Map<string, string> {
  return new Map(
    [...text.matchAll(attribute)].map(([, name = '', ...values]) => [
      name.toLowerCase(),
      values.find((value) => value !== undefined) ?? '',
    ]),
  );
}
