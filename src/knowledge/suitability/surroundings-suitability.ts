import type { Filament, Machine, Polymer } from '../../registry/generated/documents.ts';
import { highestStated } from '../../registry/stated.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { bedReach } from '../bed-bound.ts';
import { familyNames } from '../families.ts';
import { vapoursOf } from '../harmful-vapours.ts';
import type { Aspect, SuitabilityReason, WarningCode } from './suitability.ts';

/** What a bed or a chamber may lack before a part comes off or cracks, in K (common practice, no source). */
const bearable = 20;
/** What a closed chamber reaches from the heat of the bed alone, in °C (common practice, no source). */
const passiveChamber = 55;
/** Chambers from this temperature on are to be measured, in °C (common practice, no source). */
const warm = 40;
const openChamber = 30;

/** What speaks for and against bed, chamber and air of a machine. */
export function surroundingReasons(
  machine: Machine,
  filament: Filament,
  families: readonly Polymer[],
): SuitabilityReason[] {
  return [
    ...material(families),
    ...bed(machine, filament),
    ...chamber(machine, filament),
    ...fumes(machine, families),
  ];
}

function material(families: readonly Polymer[]): SuitabilityReason[] {
  const banned = families.filter(({ feedstock }) => !feedstock);
  if (banned.length === 0) return [];
  const text = `${familyNames(banned)} must not be used as a feedstock on any machine`;
  return [{ aspect: 'material', verdict: 'unsuitable', warning: 'noFeedstock', text }];
}

/** The narrowest reading of several statements would hide what the sheets differ in: the widest is taken. */
function widestOf(statements: readonly { readonly value: Range }[] | undefined): Range | null {
  if (statements === undefined || statements.length === 0) return null;
  return {
    low: Math.min(...statements.map(({ value }) => value.low)),
    high: Math.max(...statements.map(({ value }) => value.high)),
  };
}

function bed(machine: Machine, filament: Filament): SuitabilityReason[] {
  const window = widestOf(filament.bedTemperature);
  const limit = bedReach(machine);
  if (window === null || limit === null) return [];
  const reach =
    machine.bed.heated === false ? 'the bed has no heater' : `the bed goes to ${shown(limit, 'temperature')}`;
  const text = `${reach}, the filament needs ${shownRange(window, 'temperature')}`;
  return [short('bed', window.low - limit, 'bedTooCold', text)];
}

/** A reason about something that is so many kelvins too cold, or warm enough where the number is not above zero. */
function short(aspect: Aspect, kelvins: number, warning: WarningCode, text: string): SuitabilityReason {
  if (kelvins <= 0) return { aspect, verdict: 'suits', text };
  return { aspect, verdict: kelvins <= bearable ? 'limited' : 'unsuitable', warning, text };
}

/** A closed chamber that warms up beyond what the filament bears: doors can be opened, so it suits, but must be known. */
function tooWarm({ chamber }: Machine, window: Range): SuitabilityReason[] {
  const reached = Math.min(highestStated(chamber.temperatureLimit) ?? passiveChamber, passiveChamber);
  if (!chamber.enclosed || window.high >= reached) return [];
  const text = `the closed chamber warms up to about ${shown(reached, 'temperature')}, the filament bears ${shown(window.high, 'temperature')}: open the door or the lid`;
  return [{ aspect: 'chamber', verdict: 'suits', warning: 'chamberTooWarm', text }];
}

function chamber(machine: Machine, filament: Filament): SuitabilityReason[] {
  const { enclosed, heated, sensed, temperatureLimit } = machine.chamber;
  const window = widestOf(filament.chamberTemperature);
  if (window === null) return [];
  const wants = `the filament needs a chamber of ${shownRange(window, 'temperature')}`;
  if (window.low <= openChamber) {
    return [
      { aspect: 'chamber', verdict: 'suits', text: `${wants}, which a room gives` },
      ...tooWarm(machine, window),
    ];
  }
  if (!enclosed) {
    return [
      short('chamber', window.low - openChamber, 'chamberTooCold', `${wants}, and the machine is open`),
    ];
  }
  const reach = highestStated(temperatureLimit) ?? (heated ? window.low : passiveChamber);
  const kind = heated ? 'heated' : 'warmed by the bed alone';
  const reached = heated ? reach : Math.min(reach, passiveChamber);
  return [
    short(
      'chamber',
      window.low - reached,
      'chamberTooCold',
      `${wants}; this one is ${kind}, to about ${shown(reached, 'temperature')}`,
    ),
    ...sensor(sensed, window),
  ];
}

function sensor(sensed: boolean, window: Range): SuitabilityReason[] {
  if (sensed || window.low < warm) return [];
  const text = `the chamber has no temperature sensor and should be at ${shownRange(window, 'temperature')}: measure it by hand`;
  return [{ aspect: 'chamber', verdict: 'limited', warning: 'chamberNotSensed', text }];
}

function fumes({ chamber: { enclosed } }: Machine, families: readonly Polymer[]): SuitabilityReason[] {
  const vapours = [...new Set(families.flatMap((family) => vapoursOf(family)))];
  if (vapours.length === 0) return [];
  return enclosed
    ? [
        {
          aspect: 'fumes',
          verdict: 'suits',
          warning: 'harmfulVapours',
          text: `enclosed; the melt gives off ${vapours.join(', ')}: filter or extract`,
        },
      ]
    : [
        {
          aspect: 'fumes',
          verdict: 'limited',
          warning: 'harmfulVapours',
          text: `the machine is open and the melt gives off ${vapours.join(', ')}: extract the air`,
        },
      ];
}
