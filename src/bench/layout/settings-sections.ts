import type { PlanSection } from './run-layout.ts';

/** What a plan says besides its rows, for most methods. */
interface SettingsWords {
  readonly settings: readonly string[];
  readonly howTo: readonly string[];
  readonly atHand: readonly string[];
}

export function settingsSections({ settings, howTo, atHand }: SettingsWords): PlanSection[] {
  return [
    { heading: 'Settings', items: settings },
    { heading: 'How to', items: howTo },
    { heading: 'What you need', items: atHand },
  ];
}
