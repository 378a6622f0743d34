import { refusal } from '../result.ts';

/** Arguments or options that do not go together, or mean nothing. */
export function usage(message: string, help: string) {
  return refusal('usage', message, help);
}
