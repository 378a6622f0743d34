import { type Kind, kindFolders } from '../registry/kind.ts';
import type { FullRequest } from '../tables/derive/every-pairing.ts';

/** Lists and other pages at the root, so that no id of a profile can take their name. */
export const rootPages = {
  home: 'index.html',
  compare: 'compare.html',
  machines: 'machines.html',
  filaments: 'filaments.html',
  trials: 'trials.html',
  quirks: 'quirks.html',
  rules: 'rules.html',
  sources: 'sources.html',
  polymers: 'polymers.html',
  policies: 'policies.html',
  jobs: 'jobs.html',
  additions: 'additions.html',
  untabled: 'untabled.html',
} as const;

/** The style sheet of every page. */
export const stylePath = 'style.css';

/** The script of the pages that have one, and what it knows of the registry. */
export const scriptPath = 'catalogue.js';
export const dataPath = 'catalogue-data.js';

/** Page of a profile by its path from the root of the site. */
export function profilePage(kind: Kind, id: string): string {
  return `${kindFolders[kind]}/${id}.html`;
}

export function rulePage(code: string): string {
  return `rules/${code}.html`;
}

export function pairingPage({ policy, machine, nozzle, filament }: FullRequest): string {
  return `pairings/${[policy, machine, nozzle, filament].join('/')}.html`;
}

/** What stands beside a page: the same name with another ending. */
export function besidePage(page: string, ending: string): string {
  return page.replace(/\.html$/, ending);
}

/** Ways from one page to others, relative, so that the site works from any folder. */
export type WayTo = (page: string) => string;

export function wayFrom(page: string): WayTo {
  const up = '../'.repeat(page.split('/').length - 1);
  return (target) => up + target.split('/').map(encodeURIComponent).join('/');
}
