import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { type BegunRun, beginLadder, readings } from './bench-steps.ts';
import { pathOfChromium } from './chromium.ts';

/** A browser with a profile on the disk, which can be killed as a dead battery would. */
interface Killable {
  readonly page: Page;
  readonly kill: () => Promise<void>;
}

/** What came of one kill. */
export interface KillOutcome {
  /** Rows that were typed, those of them that were older than a second when the browser died, and those of these that are gone. */
  readonly typed: number;
  readonly old: number;
  readonly lost: number;
}

const untested: BegunRun = {
  machine: 'tollwick/steeple',
  filament: 'ashgrove/stagecraft-petg',
  nozzle: 'hs-0.4',
};

/**
 * Again and again: types rows of a new run, kills the browser with all its processes at a random moment, opens it anew, and counts
 * which rows are there. `profile` is a folder of the browser's own; `random` gives numbers from 0 to 1.
 */
export async function* killsOf(
  address: string,
  profile: string,
  random: () => number,
): AsyncGenerator<KillOutcome> {
  let open = await startKillable(profile);
  try {
    for (;;) {
      const { page } = open;
      await page.goto(`${address}bench.html`);
      await beginLadder(page, untested);
      const run = page.url();
      const typed = await typeForAWhile(page, random);
      const died = Date.now();
      await open.kill();
      open = await startKillable(profile);
      const there = await rowsOf(open.page, run);
      const old = typed.filter(({ at }) => died - at > 1000);
      const lost = old.filter(({ text, place }) => there[place] !== text).length;
      yield { typed: typed.length, old: old.length, lost };
    }
  } finally {
    await open.kill();
  }
}

interface TypedRow {
  readonly place: number;
  readonly text: string;
  /** When it was in its field, milliseconds since 1970. */
  readonly at: number;
}

/** Types up to three seconds long, now quickly, now slowly. */
async function typeForAWhile(page: Page, random: () => number): Promise<TypedRow[]> {
  const typed: TypedRow[] = [];
  const end = Date.now() + 300 + 2700 * random();
  const count = await readings(page).count();
  for (let place = 0; place < count && Date.now() < end; place++) {
    const text = (3 + random() / 2).toFixed(3);
    await readings(page).nth(place).fill(text);
    typed.push({ place, text, at: Date.now() });
    await new Promise((resolve) => setTimeout(resolve, 150 * random()));
  }
  return typed;
}

/** What the fields of a run hold; nothing where nothing is left of it. */
async function rowsOf(page: Page, run: string): Promise<string[]> {
  await page.goto(run);
  await readings(page)
    .first()
    .waitFor({ timeout: 15_000 })
    .catch(() => undefined);
  return readings(page).evaluateAll((all) =>
    all.map((field) => ('value' in field ? String(field.value) : '')),
  );
}

async function startKillable(profile: string): Promise<Killable> {
  const portFile = join(profile, 'DevToolsActivePort');
  rmSync(portFile, { force: true });
  for (const lock of ['SingletonLock', 'SingletonCookie', 'SingletonSocket'])
    rmSync(join(profile, lock), { force: true });
  const started = spawn(
    pathOfChromium(),
    [
      ...['--headless=new', '--no-sandbox', '--disable-dev-shm-usage', '--disable-gpu', '--no-first-run'],
      ...['--disable-background-networking', '--disable-component-update'],
      ...['--remote-debugging-port=0', `--user-data-dir=${profile}`, 'about:blank'],
    ],
    { detached: true, stdio: 'ignore' },
  );
  const browser = await connected(portFile);
  const [context] = browser.contexts();
  if (context === undefined) throw new Error('the browser has no window');
  const page = context.pages()[0] ?? (await context.newPage());
  return {
    page,
    kill: async () => {
      await killed(started);
      await browser.close().catch(() => undefined);
    },
  };
}

async function connected(portFile: string): Promise<Browser> {
  for (let tries = 0; tries < 300; tries++) {
    const [port] = existsSync(portFile) ? readFileSync(portFile, 'utf8').split('\n') : [];
    if (port !== undefined && port !== '') return chromium.connectOverCDP(`http://127.0.0.1:${port}`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('the browser does not answer');
}

/** Ends the browser and every process that it has started, at once and without a word to them. */
async function killed(started: ChildProcess): Promise<void> {
  const ended = new Promise<void>((resolve) => started.once('exit', () => resolve()));
  if (started.pid === undefined) throw new Error('the browser has not started');
  process.kill(-started.pid, 'SIGKILL');
  await ended;
}
