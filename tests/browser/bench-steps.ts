import type { Locator, Page } from 'playwright-core';

/** What a run is begun for, by the ids that the page offers. */
export interface BegunRun {
  readonly machine: string;
  readonly filament: string;
  readonly nozzle: string;
}

/** Begins a flow ladder on the bench page, and waits for its rows. */
export async function beginLadder(page: Page, { machine, filament, nozzle }: BegunRun): Promise<void> {
  await page.getByLabel('Machine').selectOption(machine);
  await page.getByLabel('Filament').selectOption(filament);
  await page.getByLabel('Nozzle', { exact: true }).selectOption(nozzle);
  await page.getByLabel('House rules').selectOption('workshop');
  await page.getByRole('button', { name: 'Begin' }).click();
  await readings(page).first().waitFor();
}

/** The fields of the readings, in their order. */
export function readings(page: Page): Locator {
  return page.locator('#bench-rows input');
}

/** Types the mass of every piece, with a decimal comma, and goes on with Enter; ends where a third is missing, as a bench would. */
export async function typeLadder(page: Page, limit: number): Promise<void> {
  const count = await readings(page).count();
  await readings(page).first().focus();
  for (let place = 0; place < count; place++) {
    const label = (await page.locator(':focus').getAttribute('aria-label')) ?? '';
    const flow = Number(/commanded flow, mm³\/s ([\d.]+)/.exec(label)?.[1]);
    const length = Number(/feed length, mm ([\d.]+)/.exec(label)?.[1]);
    const missing = missingAt(flow, limit);
    if (missing > 0.3) return;
    const mass = length * fullMass * (1 - missing) * (1 + 0.002 * Math.sin(7.3 * place));
    await page.keyboard.type(mass.toFixed(2).replace('.', ','));
    await page.keyboard.press('Enter');
  }
}

/** Of a filament of 1.75 mm and 1.27 g/cm3, in g/mm. */
const fullMass = (Math.PI / 4) * 1.75 ** 2 * 1.27e-3;

/** 5 % at the limit, nothing up to four fifths of it. */
function missingAt(flow: number, limit: number): number {
  const onset = 0.8 * limit;
  return flow > onset ? 0.05 * ((flow - onset) / (limit - onset)) ** 1.7 : 0;
}
