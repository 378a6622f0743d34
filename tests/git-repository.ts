import { execFileSync } from 'node:child_process';
import { type SampleRegistry, sampleRegistry } from './sample-registry.ts';

/** Runs git in a folder, as somebody of the bench, whatever this machine has set up. */
export function git(cwd: string, ...args: string[]): string {
  const identity = ['-c', 'user.name=Bench', '-c', 'user.email=bench@meltbounds.example'];
  const settings = ['-c', 'init.defaultBranch=main', '-c', 'commit.gpgsign=false'];
  return execFileSync('git', [...identity, ...settings, ...args], { cwd, encoding: 'utf8' });
}

/** Commits everything in a folder, which becomes a repository if it is none. */
export function commitAll(cwd: string, message: string): void {
  git(cwd, 'init', '--quiet');
  git(cwd, 'add', '.');
  git(cwd, 'commit', '--quiet', '--message', message);
}

/** The sample registry in a repository, on its branch main. */
export function committedRegistry(): SampleRegistry {
  const registry = sampleRegistry();
  commitAll(registry.cwd, 'Start');
  return registry;
}
