/** How a profile's id follows from its family and code. */

/** The file name of a code: lower case, everything that is not a letter or digit a hyphen, none at the ends. */
export function codeSlug(code: string): string {
  return code
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

/** The id of a profile: `<family>/<slug>`. */
export function profileId(family: string, code: string): string {
  return `${family}/${codeSlug(code)}`;
}
