import { type Kind, kindFolders } from '../registry/kind.ts';
import type { FullRequest } from '../tables/derive/every-pairing.ts';

/** Lists and other pages at the root, so that no id of a profile can take their name. */
export const rootPages = {
  home: 'index.html',
  compare: 'compare.html',
  bench: 'bench.html',
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

/** The script of the pages that have one, what it knows of the registry from the start, and what is searched once somebody types. */
export const scriptPath = 'catalogue.js';
export const dataPath = 'catalogue-data.js';
export const searchPath = 'search-data.js';

/** What a question by target goes over: the pairings under one of the house rules. */
export function findDataPath(policy: string): string {
  return `pairings/${policy}--find.js`;
}

/** The script of the page of the comparison, and the jobs that it may be asked about. */
export const compareScriptPath = 'compare.js';
export const jobsPath = 'compare-data.js';

/** What the bench page runs: its script, the worker that calculates, and what keeps it at hand without a network. */
export const benchScripts = {
  page: 'bench.js',
  worker: 'bench-worker.js',
  offline: 'bench-offline.js',
} as const;

/** What the bench page knows of the registry from the start; the rest it loads when a run is begun. */
export const benchDataPath = 'bench-data.js';
export const commonPartPath = 'bench/common.json';

/** The part of the registry that is about a machine, a filament or a family of polymers. */
export function partPath(kind: 'machine' | 'filament' | 'polymer', id: string): string {
  return `bench/${kindFolders[kind]}/${id}.json`;
}

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
