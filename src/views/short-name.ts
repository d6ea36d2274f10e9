/** Launchers cut a name off at about this many letters (Web App Manifest, `short_name`). */
const mostLetters = 12;

/** The beginning of a shop's name that fits beneath an icon: as many whole words as there is room for. */
export function shortName(name: string): string {
  const [first = '', ...words] = name.trim().split(/\s+/);
  let short = first;
  for (const word of words) {
    if (`${short} ${word}`.length > mostLetters) break;
    short = `${short} ${word}`;
  }
  return short;
}
