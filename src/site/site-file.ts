/** A file of the catalogue: its path from the root of the site, with `/` between folders, and its text. */
export interface SiteFile {
  readonly path: string;
  readonly text: string;
}

/** A file that stands where an earlier run has put it, by the SHA-256 of its text. */
export interface KeptFile {
  readonly path: string;
  readonly digest: string;
}

export type SiteEntry = SiteFile | KeptFile;
