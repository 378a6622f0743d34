import { familiesOf } from '../../knowledge/families.ts';
import type { FittedPairing } from '../../knowledge/pairing.ts';
import { quirksOf } from '../../knowledge/quirks.ts';
import { nozzleReasons } from '../../knowledge/suitability/nozzle-suitability.ts';
import { verdicts, worstFirst, worstVerdict } from '../../knowledge/suitability/suitability.ts';
import { supplyReasons } from '../../knowledge/suitability/supply-suitability.ts';
import { surroundingReasons } from '../../knowledge/suitability/surroundings-suitability.ts';
import { nozzlesOf } from '../../registry/nozzle.ts';
import type { Profile } from '../../registry/profile.ts';
import { claimedFlow, evidenceReasons, expectedFlow, flowReasons, measuredFlow } from './match-flow.ts';
import type { MatchContext, MatchFlow, MatchReason, PairingMatch } from './match-verdict.ts';

interface NozzleMatch {
  readonly pairing: FittedPairing;
  readonly reasons: readonly MatchReason[];
  readonly measured: MatchFlow | null;
}

/** How a machine and a filament go together, with every reason; null for a machine without nozzles. */
export function matchPairing(
  machine: Profile<'machine'>,
  filament: Profile<'filament'>,
  context: MatchContext,
): PairingMatch | null {
  const { registry, reduce } = context;
  const nozzles = nozzlesOf(machine.data).map((fitted): NozzleMatch => {
    const pairing = { machine, filament, ...fitted };
    return { pairing, reasons: nozzleReasons(pairing), measured: measuredFlow(pairing, context) };
  });
  const best = nozzles.toSorted(betterNozzle)[0];
  if (best === undefined) return null;
  const families = familiesOf(filament.data, registry);
  const settled = [
    ...surroundingReasons(machine.data, filament.data, families),
    ...best.reasons,
    ...unfitNozzles(nozzles, best),
    ...supplyReasons(machine.data, filament.data, families),
  ];
  const flow =
    worstVerdict(settled) === 'unsuitable'
      ? null
      : (best.measured ?? expectedFlow(registry, best.pairing, reduce));
  const doubts = flow?.basis === 'measured' ? evidenceReasons(best.pairing, context) : [];
  const claim = flow && claimedFlow(best.pairing, flow);
  const told = flowReasons(best.pairing, flow, claim, context.rule);
  const reasons = worstFirst<MatchReason>([...settled, ...told, ...doubts]);
  const verdict = worstVerdict(reasons);
  return {
    machine: machine.id,
    filament: filament.id,
    nozzle: best.pairing.nozzle.id,
    verdict,
    reasons,
    flow,
    claim,
    quirks: quirksOf(registry, best.pairing),
  };
}

/** The nozzle that bears the filament best; of equals the one whose measured flow is highest, then the first. */
function betterNozzle(a: NozzleMatch, b: NozzleMatch): number {
  return (
    verdicts.indexOf(worstVerdict(a.reasons)) - verdicts.indexOf(worstVerdict(b.reasons)) ||
    (b.measured?.value ?? 0) - (a.measured?.value ?? 0)
  );
}

/** Nozzles of the machine that wear out where the best one does not: a limit of the pairing. */
function unfitNozzles(nozzles: readonly NozzleMatch[], best: NozzleMatch): MatchReason[] {
  if (best.reasons.some(({ verdict }) => verdict === 'unsuitable')) return [];
  const worn = nozzles.flatMap(({ reasons }) =>
    reasons.filter(({ aspect, verdict }) => aspect === 'nozzleMaterial' && verdict === 'unsuitable'),
  );
  if (worn.length === 0) return [];
  const text = `only with ${best.pairing.nozzle.id} or one as hard: ${worn.map((reason) => reason.text).join('; ')}`;
  return [{ aspect: 'nozzleMaterial', verdict: 'limited', text }];
}
