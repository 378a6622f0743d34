import { danglingReference } from './dangling-reference.ts';
import { duplicateId } from './duplicate-id.ts';
import { futureDate } from './future-date.ts';
import { idPath } from './id-path.ts';
import { missingProvenance } from './missing-provenance.ts';
import { observationsPlace } from './observations-place.ts';
import { otherConditions } from './other-conditions.ts';
import type { Rule } from './rule.ts';
import { unreducibleTrial } from './unreducible-trial.ts';
import { unsupportedLimit } from './unsupported-limit.ts';

/** Every rule that judges what the schema has accepted. */
export const rules: readonly Rule[] = [
  idPath,
  duplicateId,
  danglingReference,
  missingProvenance,
  futureDate,
  observationsPlace,
  unreducibleTrial,
  unsupportedLimit,
  otherConditions,
];
