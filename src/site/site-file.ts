/** A file of the catalogue: its path from the root of the site, with `/` between folders, and its text. */
export interface SiteFile {
  readonly path: string;
  readonly text: string;
}
