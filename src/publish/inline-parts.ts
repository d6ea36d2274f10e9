/** What a finished page holds within itself that a browser runs: scripts, styles, and attributes that are either. */

export interface InlineParts {
  /** The text of each script that is run, as it stands between its tags; data in script elements is none. */
  readonly scripts: readonly string[];
  readonly styles: readonly string[];
  /** Style attributes and event handlers, as `tag attribute`: a strict policy refuses them. */
  readonly attributes: readonly string[];
}

const commentOrTag = /<!--[\s\S]*?-->|<([a-zA-Z][^\s/>]*)((?:[^>"']|"[^"]*"|'[^']*')*)>/g;
const attribute = /([^\s"'=<>/]+)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'>]+)))?/g;
const runTypes = ['', 'module', 'text/javascript'];

/** Reads tag by tag, so that a tag within an attribute, a comment or a script is not taken for one. */
export function inlineParts(html: string): InlineParts {
  const scripts: string[] = [];
  const styles: string[] = [];
  const attributes: string[] = [];
  const tags = new RegExp(commentOrTag);
  for (let match = tags.exec(html); match; match = tags.exec(html)) {
    const tag = match[1]?.toLowerCase();
    if (tag === undefined) continue;
    const given = new Map(
      [...(match[2] ?? '').matchAll(attribute)].map(([, name = '', ...values]) => [
        name.toLowerCase(),
        values.find((value) => value !== undefined) ?? '',
      ]),
    );
    for (const name of given.keys()) {
      if (name === 'style' || name.startsWith('on')) attributes.push(`${tag} ${name}`);
    }
    if (tag !== 'script' && tag !== 'style') continue;
    const begin = tags.lastIndex;
    const end = tag === 'style' ? /<\/style/gi : /<\/script/gi;
    end.lastIndex = begin;
    const text = html.slice(begin, end.exec(html)?.index);
    tags.lastIndex = begin + text.length;
    if (tag === 'style') styles.push(text);
    else if (!given.has('src') && runTypes.includes(given.get('type') ?? '')) scripts.push(text);
  }
  return { scripts, styles, attributes };
}
