import { oneLine } from '../text/one-line.ts';
import type { EvidenceFault, EvidenceFaultCode } from './standing.ts';

const verbs: Readonly<Record<EvidenceFaultCode, string>> = {
  missing: 'is not supported by its evidence',
  unsupported: 'is not supported by its evidence',
  otherConditions: 'is not supported by its evidence',
  stale: 'rests on old evidence',
};

/** What a fault makes of a value, to follow its name: `rests on old evidence, acknowledged until 2027-01-31 (REASON)`. */
export function standingText({ code, acknowledged }: EvidenceFault): string {
  return acknowledged === null ? verbs[code] : `${verbs[code]}, ${acknowledgedText(acknowledged)}`;
}

/** Until when a finding is accepted, and why, on one line. */
function acknowledgedText({ until, reason }: NonNullable<EvidenceFault['acknowledged']>): string {
  return oneLine(`acknowledged until ${until} (${reason.trim()})`);
}
