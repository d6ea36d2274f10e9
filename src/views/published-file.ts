/** What is published beside the pages: files of data, for other programs and for scripts of the site. */

export interface PublishedFile {
  /** Below the base path. */
  readonly path: string;
  /** Made when it is written, so that only one need be in memory. */
  readonly text: () => string;
  /** The profile it is about: files about one profile are made one after another, as they rest on the same output. */
  readonly profile?: string;
}

/** What such files say of the site they are part of. */
export interface Published {
  /** Of the start page, with a slash at the end; see siteAddress. */
  readonly address: string;
  /** The day the content is of, ISO 8601. */
  readonly date: string;
}
