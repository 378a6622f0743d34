import type { ProfileDiff } from '../../decisions/diff/diff-profile.ts';
import type { CellMove } from '../../decisions/diff/diff-tables.ts';
import type { ChangeSide, ProfileChange } from '../../decisions/diff/profile-changes.ts';
import { tableCautions } from '../../knowledge/cautions.ts';
import type { SpeedRow } from '../../tables/derive/speed-table.ts';
import { jsonText } from '../../text/json-text.ts';
import { type Dimension, dimensionInfo } from '../../units/dimension.ts';
import { reportedFinding } from '../findings/findings-as-json.ts';
import type { DiffReport } from './diff-report.ts';

/** Version of the form of the JSON differences, see `schema/output/diff.schema.json`. */
const diffFormat = 'meltbounds-diff/1';

/** A comparison for programs, whole; numbers are in canonical units, which stand beside them. */
export function formatDiffAsJson({ diff, base, head }: DiffReport): string {
  const { profiles, tables, bump, origin, findings } = diff;
  const document = {
    format: diffFormat,
    base,
    head,
    bump,
    origin,
    profiles: profiles.map(profileObject),
    tables: {
      added: tables.added,
      removed: tables.removed,
      moves: tables.moves.map(moveObject),
      settings: tables.settings,
    },
    findings: findings.map(reportedFinding),
    cautions: tableCautions,
  };
  return jsonText(document);
}

function profileObject({ changes, ...profile }: ProfileDiff) {
  return { ...profile, changes: changes.map(changeObject) };
}

function changeObject({ name, conditions, dimension, base, head, bump }: ProfileChange) {
  return { name, conditions, base: sideObject(base, dimension), head: sideObject(head, dimension), bump };
}

function sideObject(side: ChangeSide | null, dimension: Dimension | null) {
  const unit = dimension === null ? undefined : dimensionInfo[dimension].canonicalUnit;
  if (side === null) return null;
  const { value, basis, isSimulated } = side;
  return { value, ...(unit !== undefined && { unit }), basis, ...(isSimulated && { isSimulated }) };
}

function moveObject({ base, head, ...name }: CellMove) {
  const row = head ?? base;
  const { feature, layerHeight, lineWidth } = row ?? {};
  return { ...name, feature, layerHeight, lineWidth, base: rowObject(base), head: rowObject(head) };
}

/** Units as in the tables: mm/s, mm3/s, mm/s2, Cel. */
function rowObject(row: SpeedRow | null) {
  if (row === null) return null;
  const { speed, flow, acceleration, nozzleTemperature, bound, basis, flags } = row;
  return { speed, flow, acceleration, nozzleTemperature, bound, basis, flags };
}
