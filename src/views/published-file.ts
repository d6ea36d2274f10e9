/** What is published beside the pages: files for other programs. */

export interface PublishedFile {
  /** Below the base path. */
  readonly path: string;
  /** Made when it is written, so that only one need be in memory. */
  readonly text: () => string;
}

/** What such files say of the site they are part of. */
export interface Published {
  /** Of the start page, with a slash at the end; see siteAddress. */
  readonly address: string;
  /** The day the content is of, ISO 8601. */
  readonly date: string;
}
