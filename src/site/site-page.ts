import type { Document } from '../text/document.ts';
import { formatHtml } from '../text/format-html.ts';
import { element, type Markup } from '../text/html-element.ts';
import { documentInPrint } from '../units/in-print.ts';
import {
  benchDataPath,
  benchScripts,
  compareScriptPath,
  dataPath,
  jobsPath,
  rootPages,
  scriptPath,
  stylePath,
  wayFrom,
} from './address.ts';
import type { SiteFile } from './site-file.ts';

/** Nothing is loaded but from the site itself, and nothing is sent anywhere (W3C, Content Security Policy Level 3). */
const contentPolicy = ["default-src 'none'", "style-src 'self'", "base-uri 'none'", "form-action 'none'"];

/** Scripts of the site itself, on the pages that have one. */
const scriptPolicy = ["script-src 'self'"];

/** The bench page also starts workers and loads data, all of it from the site itself. */
const benchPolicy = [...scriptPolicy, "worker-src 'self'", "connect-src 'self'"];

const mainPages = [
  ['Pairings', rootPages.home],
  ['Compare', rootPages.compare],
  ['Bench', rootPages.bench],
  ['Machines', rootPages.machines],
  ['Filaments', rootPages.filaments],
  ['Trials', rootPages.trials],
  ['Quirks', rootPages.quirks],
  ['Rules', rootPages.rules],
  ['Sources', rootPages.sources],
] as const;

const otherPages = [
  ['Polymers', rootPages.polymers],
  ['House rules', rootPages.policies],
  ['Jobs', rootPages.jobs],
  ['Additions', rootPages.additions],
  ['Pairings without a table', rootPages.untabled],
] as const;

/** A document as a page of the site. */
export function documentPage(path: string, title: string, document: Document): SiteFile {
  return sitePage(path, title, formatHtml(documentInPrint(document)));
}

/** A page of the site around its content, in English. */
export function sitePage(path: string, title: string, content: readonly Markup[]): SiteFile {
  return pageWith(path, title, content, { scripts: [], policy: [] });
}

/** The page that can do more where scripts run: the data of the catalogue, then the script. */
export function scriptedPage(path: string, title: string, content: readonly Markup[]): SiteFile {
  return pageWith(path, title, content, { scripts: [dataPath, scriptPath], policy: scriptPolicy });
}

/** The page on which pairings are compared: the jobs, then its script. */
export function compareScriptedPage(path: string, title: string, content: readonly Markup[]): SiteFile {
  return pageWith(path, title, content, { scripts: [jobsPath, compareScriptPath], policy: scriptPolicy });
}

/** The page on which trials are typed. */
export function benchScriptedPage(path: string, title: string, content: readonly Markup[]): SiteFile {
  return pageWith(path, title, content, {
    scripts: [benchDataPath, benchScripts.page],
    policy: benchPolicy,
  });
}

function pageWith(
  path: string,
  title: string,
  content: readonly Markup[],
  { scripts, policy }: { readonly scripts: readonly string[]; readonly policy: readonly string[] },
): SiteFile {
  const to = wayFrom(path);
  const head = element('head', {}, [
    element('meta', { charset: 'utf-8' }),
    element('meta', {
      'http-equiv': 'Content-Security-Policy',
      content: [...contentPolicy, ...policy].join('; '),
    }),
    element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    element('title', {}, [title]),
    element('link', { rel: 'stylesheet', href: to(stylePath) }),
    ...scripts.map((script) => element('script', { src: to(script), defer: true })),
  ]);
  const body = element('body', {}, [
    element('nav', { class: 'pages', 'aria-label': 'Catalogue' }, [pageList(path, mainPages)]),
    ...content,
    element('footer', {}, [
      element('nav', { 'aria-label': 'More of the catalogue' }, [pageList(path, otherPages)]),
      element('p', {}, [
        'Starting points for supervised trials: follow the manual of the machine, local codes and qualified people.',
      ]),
    ]),
  ]);
  return { path, text: `<!DOCTYPE html>\n${element('html', { lang: 'en' }, [head, body]).markup}\n` };
}

function pageList(path: string, pages: readonly (readonly [name: string, page: string])[]): Markup {
  const to = wayFrom(path);
  const items = pages.map(([name, page]) => {
    const isHere = page === path ? 'page' : undefined;
    return element('li', {}, [element('a', { href: to(page), 'aria-current': isHere }, [name])]);
  });
  return element('ul', {}, items);
}
