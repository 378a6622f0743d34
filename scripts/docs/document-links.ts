/** Targets of links and pictures of a Markdown document inside of the project, line ends inside of their texts included. */
export function linksOf(markdown: string): string[] {
  return [...prose(markdown).matchAll(/\]\(([^)\s]+)\)/g)]
    .map(([, target = '']) => target)
    .filter((target) => !/^[a-z]+:/.test(target));
}

/** A link without its anchor; empty where it stays in its document. */
export function pathOfLink(link: string): string {
  return link.split('#')[0] ?? '';
}

/** A document without its fenced blocks and code spans. */
function prose(markdown: string): string {
  return markdown.replaceAll(/^ *```[\s\S]*?^ *```$/gm, '').replaceAll(/`[^`\n]+`/g, 'code');
}
