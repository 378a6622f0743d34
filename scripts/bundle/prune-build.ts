import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';

const importPattern = /(?:\bfrom|\bimport)\s*\(?\s*["'](\.[^"']+)["']/g;

/**
 * Removes the modules and types of a build that no entrance of the package leads to, such as those of the command line, which
 * comes as a bundle. `entrances` are modules by their paths from the folder, without their endings.
 */
export function pruneBuild(folder: string, entrances: readonly string[]): void {
  for (const ending of ['.js', '.d.ts']) {
    const reached = reachedFrom(folder, entrances, ending);
    const built = readdirSync(folder, { recursive: true, encoding: 'utf8' });
    for (const file of built.map((path) => path.replaceAll('\\', '/'))) {
      if (file.endsWith(ending) && !reached.has(file)) rmSync(join(folder, file));
    }
  }
}

function reachedFrom(folder: string, entrances: readonly string[], ending: string): ReadonlySet<string> {
  const reached = new Set(entrances.map((entrance) => `${entrance}${ending}`));
  // A set is walked in the order in which its members were added, those added on the way too.
  for (const file of reached) {
    if (!existsSync(join(folder, file))) continue;
    for (const [, target = ''] of readFileSync(join(folder, file), 'utf8').matchAll(importPattern)) {
      reached.add(
        join(dirname(file), target)
          .replaceAll('\\', '/')
          .replace(/\.[jt]s$/, ending),
      );
    }
  }
  return reached;
}
