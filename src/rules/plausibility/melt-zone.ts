import { flowLimits } from '../../evidence/supported-flow-limits.ts';
import { widest } from '../../knowledge/families.ts';
import { blamedAtHotEnd, type FlowLimit } from '../../knowledge/flow-limits.ts';
import { highestDiffusivity, roomTemperature } from '../../knowledge/melt-heat.ts';
import { flowAtCoreTemperature } from '../../physics/melt-zone.ts';
import { highestStated } from '../../registry/stated.ts';
import type { CubicMillimetresPerSecond, DegreesCelsius } from '../../units/canonical.ts';
import { shown, shownNumber } from '../../units/wording.ts';
import { alike, hotEnd } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** On top of favourable values throughout, for swirl at the inlet and other help (common practice, no source). */
const generousFactor = 1.5;

export const rule: ProfileRule<'machine' | 'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['machine', 'filament'],
  severity: 'warning',
  statement: 'The melt zone is long enough to soften the core of the filament at the stated flow.',
  rationale:
    'A hard core blocks the nozzle; only a melt zone that splits the flow melts faster than a plain tube.',
  source:
    'Conduction in a cylinder: Incropera et al., Fundamentals of Heat and Mass Transfer, section 5.6; the feed is bound where the solid core reaches the nozzle: Luo et al., Additive Manufacturing 32 (2020) 101019 (abstract); an amorphous polymer softens at its glass transition: Osswald et al., Additive Manufacturing 22 (2018) 51-59. The diffusivity is that of the solid, without the heat that the transition takes up, which errs to the high side.',
  formula: `Q = ${generousFactor} pi a L/Fo(theta), a diffusivity, L melt zone, theta = (T_softening - T_nozzle)/(T_room - T_nozzle)`,
  example: alike('machine', { bad: '5 mm', good: '24 mm' }, (meltZoneLength) =>
    hotEnd({ meltZoneLength, meltFlow: ['60 mm3/s', 'polymer: PLA, nozzleTemperature: 230 Cel'] }),
  ),
  *check(profile, context) {
    for (const limit of flowLimits(profile, context)) {
      const length = highestStated(limit.hotEnd.meltZoneLength);
      const bound = length === null ? null : plainTubeFlow(limit, length);
      if (length === null || bound === null || limit.value <= bound.flow) continue;
      yield {
        path: limit.path,
        part: 'value',
        blames: blamedAtHotEnd(limit, 'meltZoneLength'),
        message: `${shown(limit.value, 'volumeFlow')} leaves the core of the filament below ${shown(bound.softening, 'temperature')}: a plain tube of ${shown(length, 'length')} softens up to ${shown(bound.flow, 'volumeFlow')} (assumed: diffusivity ${shownNumber(bound.diffusivity)} mm2/s, factor ${generousFactor})`,
        found: shown(limit.value, 'volumeFlow'),
        allowed: `up to ${shown(bound.flow, 'volumeFlow')}`,
        help: 'Check the flow and the length of the melt zone. If the melt zone splits the flow, so that heat has a shorter way, acknowledge the finding with that reason.',
      };
    }
  },
};

interface PlainTubeFlow {
  readonly flow: CubicMillimetresPerSecond;
  readonly softening: DegreesCelsius;
  readonly diffusivity: number;
}

function plainTubeFlow(limit: FlowLimit, heatedLength: number): PlainTubeFlow | null {
  const wall = limit.nozzleTemperature ?? widest(limit.families, 'nozzleTemperature')?.high ?? null;
  const softening = lowestSoftening(limit);
  if (wall === null || softening === null || softening >= wall || softening <= roomTemperature) return null;
  const diffusivity = highestDiffusivity(limit);
  const zone = { wallTemperature: wall, entryTemperature: roomTemperature, diffusivity, heatedLength };
  return { flow: generousFactor * flowAtCoreTemperature(zone, softening), softening, diffusivity };
}

function lowestSoftening({ families }: FlowLimit): DegreesCelsius | null {
  const crystalline = families.some(({ structure }) => structure === 'semiCrystalline');
  return widest(families, crystalline ? 'melting' : 'glassTransition')?.low ?? null;
}
