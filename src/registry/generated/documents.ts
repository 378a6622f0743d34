// Generated from schema/ by `npm run generate`; do not edit.
import type { Count, CubicMillimetresPerSecond, Decibels, Degrees, DegreesCelsius, Fraction, Grams, GramsPerCubicMillimetre, Kelvins, Millimetres, MillimetresPerSecond, MillimetresPerSecondSquared, Money, Newtons, Range, Seconds, Watts } from '../../units/canonical.ts';

/**
 * A volume flow with its provenance.
 */
export interface Statement<Value> {
  /**
   * The value.
   */
  value: Value;
  /**
   * 95 % coverage interval of the value (JCGM 101).
   */
  interval?: Range;
  /**
   * What the value rests on. measured needs evidence, published and claimed a source, derived and assumed a reason.
   */
  basis: 'measured' | 'published' | 'derived' | 'claimed' | 'assumed';
  /**
   * The source that states it.
   */
  source?: string;
  /**
   * The trial whose readings show it.
   */
  evidence?: string;
  /**
   * Digest of the readings that the value was adopted from; `reduce --adopt` writes it, and a trial that is changed later is found.
   */
  readings?: string;
  /**
   * How a derived value was calculated, why an assumed one is reasonable, or why a measured one is kept on the safe side of its interval.
   */
  reason?: string;
  /**
   * Where in the source it stands: table, section, page.
   */
  locator?: string;
  /**
   * The figure is remembered; the source named is where it should be looked up.
   */
  fromMemory?: true;
  /**
   * Conditions under which the value holds; absent means that it holds in general.
   */
  at?: {
    /**
     * On this machine.
     */
    machine?: string;
    /**
     * With this nozzle of the machine.
     */
    nozzle?: string;
    /**
     * With this filament.
     */
    filament?: string;
    /**
     * With filaments of this family.
     */
    polymer?: string;
    /**
     * At this nozzle temperature.
     */
    nozzleTemperature?: DegreesCelsius;
    /**
     * At this layer height.
     */
    layerHeight?: Millimetres;
    /**
     * At this acceleration.
     */
    acceleration?: MillimetresPerSecondSquared;
    /**
     * With filament of this batch; where it is not known which batch is printed, every one counts.
     */
    batch?: string;
  };
  /**
   * Day on which it was measured or read.
   */
  date?: string;
  /**
   * More about it.
   */
  note?: string;
}

/**
 * One note.
 */
export interface FieldNote {
  /**
   * When it happened.
   */
  date: string;
  /**
   * What happened.
   */
  what: string;
  /**
   * What it did to the print or the bench run.
   */
  effect: string;
  /**
   * How to avoid it or live with it.
   */
  wayRound?: string;
  /**
   * What the note is about: where this is stated, it is shown there only.
   */
  concerns?: {
    /**
     * This machine only; in a note of a machine or of a trial it is the one that they are about.
     */
    machine?: string;
    /**
     * This nozzle of the machine only.
     */
    nozzle?: string;
    /**
     * The flow above which it shows.
     */
    aboveFlow?: CubicMillimetresPerSecond;
    /**
     * The nozzle temperatures at which it shows.
     */
    nozzleTemperature?: Range;
  };
}

/**
 * One accepted finding.
 */
export interface Acknowledgement {
  /**
   * Code of the rule.
   */
  rule: string;
  /**
   * JSON pointer (RFC 6901) to the value. Its position in a list may change.
   */
  at: string;
  /**
   * What the rule finds there, as its message and `check --format json` say it. Any other value is not accepted.
   */
  found: string;
  /**
   * Why it is accepted.
   */
  reason: string;
  /**
   * Last day on which it is accepted, at most twelve months from now.
   */
  until: string;
}

/**
 * A material-extrusion machine: what it is built of and what its sheet claims or a bench has measured.
 */
export interface Machine {
  /**
   * What this document is.
   */
  kind: 'machine';
  /**
   * Identifier; the path of the file follows from it.
   */
  id: string;
  /**
   * Version of this profile (semantic versioning).
   */
  version: string;
  /**
   * Name of the model.
   */
  name: string;
  /**
   * Name of the maker.
   */
  maker: string;
  /**
   * Source of the facts below that carry no source of their own.
   */
  sheet: string;
  /**
   * How the axes move: the bed along one of them, a gantry above a bed that only lifts, parallel arms, or a belt that carries the part away, so that its length is only limited by the room behind the machine.
   */
  layout: 'movingBed' | 'gantry' | 'parallelArm' | 'belt';
  /**
   * Build envelope: the largest part that fits (ISO/ASTM 52900).
   */
  envelope: {
    /**
     * Width.
     */
    x: Millimetres;
    /**
     * Depth.
     */
    y: Millimetres;
    /**
     * Height.
     */
    z: Millimetres;
    /**
     * The same as the sheet states it, typed once more: width x depth x height, or diameter x height; the sides are compared with it.
     */
    asStated?: string;
  };
  /**
   * Version of the controller software that the statements refer to.
   */
  firmware?: string;
  /**
   * Highest speed of the print head along a line.
   */
  topSpeed: readonly Statement<MillimetresPerSecond>[];
  /**
   * Acceleration that the axes hold.
   */
  acceleration: readonly Statement<MillimetresPerSecondSquared>[];
  /**
   * Time from the end of a layer to the beginning of the next one.
   */
  layerChangeTime?: readonly Statement<Seconds>[];
  /**
   * Time that a travel move takes besides its way: filament drawn back before it and pushed on after it.
   */
  travelPause?: readonly Statement<Seconds>[];
  /**
   * Highest contour speed whose surface still passes.
   */
  contourSpeed?: readonly Statement<MillimetresPerSecond>[];
  /**
   * Hot ends, each with the nozzles that fit it.
   *
   * @minItems 1
   * @maxItems 200
   *
   * Items: A hot end.
   */
  hotEnds: {
    /**
     * Identifier, unique within the machine.
     */
    id: string;
    /**
     * Nominal diameter of the filament that it takes.
     */
    filamentDiameter: Millimetres;
    /**
     * Electrical power of the heater.
     */
    heaterPower?: readonly Statement<Watts>[];
    /**
     * Length of the heated channel in which the filament melts.
     */
    meltZoneLength?: readonly Statement<Millimetres>[];
    /**
     * Highest force with which the drive pushes the filament into the hot end before it slips or stalls.
     */
    driveForce?: readonly Statement<Newtons>[];
    /**
     * Highest temperature that the hot end may be set to.
     */
    temperatureLimit?: readonly Statement<DegreesCelsius>[];
    /**
     * What lines the filament path in the heated zone: metal only, or a polymer tube that must stay cooler.
     */
    liner?: 'allMetal' | 'polymer';
    /**
     * Nozzles that fit the hot end.
     *
     * @minItems 1
     * @maxItems 200
     *
     * Items: A nozzle.
     */
    nozzles: {
      /**
       * Identifier, unique within the machine.
       */
      id: string;
      /**
       * Diameter of the bore.
       */
      diameter: Millimetres;
      /**
       * Material of the tip.
       */
      material: 'brass' | 'platedBrass' | 'copper' | 'stainlessSteel' | 'hardenedSteel' | 'carbide' | 'ruby';
    }[];
    /**
     * Highest flow of melt, as claimed or measured, with the conditions under which it holds.
     */
    meltFlow?: readonly Statement<CubicMillimetresPerSecond>[];
  }[];
  /**
   * The build platform.
   */
  bed: {
    /**
     * Whether the bed can be heated; left out, it can, to the limit below.
     */
    heated?: boolean;
    /**
     * Highest temperature of the bed; left out where it cannot be heated.
     */
    temperatureLimit?: readonly Statement<DegreesCelsius>[];
  };
  /**
   * The build chamber.
   */
  chamber: {
    /**
     * Whether walls and a door keep draughts out.
     */
    enclosed: boolean;
    /**
     * Whether a heater warms the chamber.
     */
    heated: boolean;
    /**
     * Whether a sensor reads the temperature of the chamber.
     */
    sensed: boolean;
    /**
     * Highest temperature of the chamber.
     */
    temperatureLimit?: readonly Statement<DegreesCelsius>[];
  };
  /**
   * Fans that cool the fresh bead.
   */
  partCooling?: {
    /**
     * Whether the fan speed can be set.
     */
    adjustable: boolean;
    /**
     * Air speed at the nozzle with the fans at full speed.
     */
    airSpeed?: readonly Statement<MillimetresPerSecond>[];
  };
  /**
   * A built-in dryer for the filament.
   */
  dryer?: {
    /**
     * Whether its temperature can be set.
     */
    setting: 'fixed' | 'adjustable';
    /**
     * The temperature of a fixed dryer.
     */
    temperature?: DegreesCelsius;
    /**
     * The range of an adjustable dryer.
     */
    range?: Range;
  };
  /**
   * By how much the melt at the nozzle is warmer than its set temperature, below 0 where it is colder.
   */
  nozzleTemperatureOffset?: readonly Statement<Kelvins>[];
  /**
   * By how much the bed is warmer than its set temperature, below 0 where it is colder.
   */
  bedTemperatureOffset?: readonly Statement<Kelvins>[];
  /**
   * By how much the air of the chamber is warmer than its set temperature, below 0 where it is colder.
   */
  chamberTemperatureOffset?: readonly Statement<Kelvins>[];
  /**
   * By how much the air in the dryer is warmer than its set temperature, below 0 where it is colder.
   */
  dryerTemperatureOffset?: readonly Statement<Kelvins>[];
  /**
   * The largest spool that the holder takes.
   */
  spool?: {
    /**
     * Net mass of filament.
     */
    mass: Grams;
    /**
     * Outer diameter of the spool.
     */
    diameter?: Millimetres;
    /**
     * Width of the spool.
     */
    width?: Millimetres;
  };
  /**
   * What the machine watches.
   *
   * @minItems 1
   * @maxItems 200
   *
   * Items: A sensor.
   */
  sensors?: (
    'filamentPresence' | 'clogDetection' | 'chamberTemperature' | 'doorOpen' | 'nozzleContact' | 'vibration'
  )[];
  /**
   * A-weighted sound pressure level at 1 m while it prints.
   */
  soundLevel?: readonly Statement<Decibels>[];
  /**
   * Price of the machine without tax.
   */
  price?: readonly Statement<Money>[];
  /**
   * Present where the document is invented: no such thing is made, sold or published. Whatever rests on it says so.
   */
  invented?: true;
  /**
   * What a reader must know about the document as a whole, for instance that it is invented.
   */
  notice?: string;
  /**
   * Dated notes from use: what happened, its effect, the way round it.
   */
  fieldNotes?: readonly FieldNote[];
  /**
   * Findings that a reviewer has accepted, each until a date.
   */
  acknowledged?: readonly Acknowledgement[];
}

/**
 * A filament: what it is made of, the temperatures it needs, and the limits that benches have found for it on machines.
 */
export interface Filament {
  /**
   * What this document is.
   */
  kind: 'filament';
  /**
   * Identifier; the path of the file follows from it.
   */
  id: string;
  /**
   * Version of this profile (semantic versioning).
   */
  version: string;
  /**
   * Name of the product.
   */
  name: string;
  /**
   * Name of the maker.
   */
  maker: string;
  /**
   * Source of the facts below that carry no source of their own.
   */
  sheet: string;
  /**
   * Family of the base polymer.
   */
  polymer: string;
  /**
   * Material by ISO 1043: polymer, then fillers with their mass fraction in per cent; `E` marks a foamed or foaming grade, `FR(17)` a flame retardant.
   */
  designation: string;
  /**
   * Fillers and reinforcements.
   *
   * @minItems 1
   * @maxItems 200
   *
   * Items: A filler.
   */
  fillers?: {
    /**
     * Symbol by ISO 1043-2: material, then form; that of a metal may name its elements.
     */
    symbol: string;
    /**
     * Mass fraction in the filament.
     */
    massFraction: Fraction;
  }[];
  /**
   * Nominal diameter of the filament.
   */
  diameter: Millimetres;
  /**
   * Stated deviation of the diameter to either side.
   */
  diameterTolerance?: Millimetres;
  /**
   * Density of the solid filament.
   */
  density: readonly Statement<GramsPerCubicMillimetre>[];
  /**
   * Colours that the statements hold for.
   *
   * @minItems 1
   * @maxItems 200
   *
   * Items: One line of text, at most 200 characters.
   */
  colours?: string[];
  /**
   * Net mass of filament on a full spool.
   */
  spoolMass?: Grams;
  /**
   * Price of a full spool without tax.
   */
  price?: readonly Statement<Money>[];
  /**
   * Temperature at which the filament softens: glass transition of an amorphous grade.
   */
  softening?: readonly Statement<DegreesCelsius>[];
  /**
   * Window of nozzle temperatures.
   */
  nozzleTemperature: readonly Statement<Range>[];
  /**
   * Nozzle temperature of the first layer.
   */
  firstLayerNozzleTemperature?: readonly Statement<DegreesCelsius>[];
  /**
   * Window of bed temperatures.
   */
  bedTemperature: readonly Statement<Range>[];
  /**
   * Window of chamber temperatures.
   */
  chamberTemperature?: readonly Statement<Range>[];
  /**
   * Window of part-cooling fan settings, as a share of full speed.
   */
  fan?: readonly Statement<Range>[];
  /**
   * Shortest time for a layer in which it still holds its shape.
   */
  shortestLayerTime?: readonly Statement<Seconds>[];
  /**
   * Air temperature for drying the spool.
   */
  dryingTemperature?: readonly Statement<DegreesCelsius>[];
  /**
   * Time in the dryer from a spool in equilibrium with room air.
   */
  dryingTime?: readonly Statement<Seconds>[];
  /**
   * Length of filament that is drawn back before a travel move.
   */
  retractionLength?: readonly Statement<Millimetres>[];
  /**
   * Speed at which the filament is drawn back.
   */
  retractionSpeed?: readonly Statement<MillimetresPerSecond>[];
  /**
   * Time constant by which the feed runs ahead of the speed, so that the pressure in the nozzle follows it.
   */
  pressureCompensation?: readonly Statement<Seconds>[];
  /**
   * Highest flow that a machine and nozzle deliver within the accepted deficit.
   */
  meltFlow?: readonly Statement<CubicMillimetresPerSecond>[];
  /**
   * Highest speed of the first layer at which it still sticks.
   */
  stickingSpeed?: readonly Statement<MillimetresPerSecond>[];
  /**
   * Highest speed at which a bridge still holds.
   */
  bridgeSpeed?: readonly Statement<MillimetresPerSecond>[];
  /**
   * Highest speed at which an overhang still holds its shape.
   */
  overhangSpeed?: readonly Statement<MillimetresPerSecond>[];
  /**
   * Highest contour speed whose surface still passes.
   */
  contourSpeed?: readonly Statement<MillimetresPerSecond>[];
  /**
   * Present where the document is invented: no such thing is made, sold or published. Whatever rests on it says so.
   */
  invented?: true;
  /**
   * What a reader must know about the document as a whole, for instance that it is invented.
   */
  notice?: string;
  /**
   * Dated notes from use: what happened, its effect, the way round it.
   */
  fieldNotes?: readonly FieldNote[];
  /**
   * Findings that a reviewer has accepted, each until a date.
   */
  acknowledged?: readonly Acknowledgement[];
}

/**
 * A polymer family: published ranges against which filaments of the family are judged.
 */
export interface Polymer {
  /**
   * What this document is.
   */
  kind: 'polymer';
  /**
   * Identifier; the path of the file follows from it.
   */
  id: string;
  /**
   * Version of this profile (semantic versioning).
   */
  version: string;
  /**
   * Chemical name.
   */
  name: string;
  /**
   * Whether the solid crystallises under the usual conditions of the process.
   */
  structure: 'amorphous' | 'semiCrystalline';
  /**
   * Whether a filament of the family may be used at all; false for families that give off dangerous gas.
   */
  feedstock: boolean;
  /**
   * Density of the unfilled solid at room temperature.
   */
  density: readonly Statement<Range>[];
  /**
   * Glass transition.
   */
  glassTransition: readonly Statement<Range>[];
  /**
   * Melting of the crystals.
   */
  melting?: readonly Statement<Range>[];
  /**
   * Specific heat of the solid at 20 Cel to 25 Cel.
   */
  specificHeatSolid?: readonly Statement<Range>[];
  /**
   * Specific heat of the melt.
   */
  specificHeatMelt?: readonly Statement<Range>[];
  /**
   * Viscosity of the melt of usual grades at usual nozzle temperatures, at the shear rates of nozzles: 100 to 1000 a second.
   */
  meltViscosity?: readonly Statement<Range>[];
  /**
   * Compressive yield stress of the dry, unfilled solid at room temperature; of elastomers the stress at a tenth of strain.
   */
  compressiveYield?: readonly Statement<Range>[];
  /**
   * Thermal conductivity.
   */
  thermalConductivity?: readonly Statement<Range>[];
  /**
   * Heat of fusion of the fully crystalline polymer.
   */
  heatOfFusion?: readonly Statement<Range>[];
  /**
   * Thermal decomposition in the laboratory; not a process limit.
   */
  decomposition?: readonly Statement<Range>[];
  /**
   * Moisture in equilibrium with air at 23 Cel and 50 % relative humidity, by mass.
   */
  moistureEquilibrium?: readonly Statement<Range>[];
  /**
   * Moisture when saturated, by mass.
   */
  moistureSaturated?: readonly Statement<Range>[];
  /**
   * Air temperature for drying on the spool.
   */
  dryingTemperature?: readonly Statement<Range>[];
  /**
   * Drying time.
   */
  dryingTime?: readonly Statement<Range>[];
  /**
   * Usual nozzle temperatures in material extrusion.
   */
  nozzleTemperature?: readonly Statement<Range>[];
  /**
   * Nozzle temperature not to exceed in practice.
   */
  nozzleTemperatureLimit?: readonly Statement<DegreesCelsius>[];
  /**
   * Substances that the hot polymer is known to give off.
   *
   * @minItems 1
   * @maxItems 200
   *
   * Items: A substance.
   */
  emissions?: (
    | 'lactide'
    | 'acetaldehyde'
    | 'styrene'
    | 'acrylonitrile'
    | 'butadiene'
    | 'acrylates'
    | 'hydrogenCyanide'
    | 'caprolactam'
    | 'cyclopentanone'
    | 'laurolactam'
    | 'bisphenolA'
    | 'phenol'
    | 'aldehydes'
    | 'isocyanates'
    | 'aceticAcid'
    | 'methylMethacrylate'
    | 'formaldehyde'
    | 'hydrogenChloride'
    | 'ultrafineParticles'
  )[];
  /**
   * Cautions for whoever handles it.
   *
   * @minItems 1
   * @maxItems 200
   *
   * Items: Text of one or more paragraphs, at most 4000 characters.
   */
  cautions?: string[];
  /**
   * What a reader must know about the document as a whole, for instance that it is invented.
   */
  notice?: string;
  /**
   * Dated notes from use: what happened, its effect, the way round it.
   */
  fieldNotes?: readonly FieldNote[];
  /**
   * Findings that a reviewer has accepted, each until a date.
   */
  acknowledged?: readonly Acknowledgement[];
}

/**
 * One bench run: what was run, the conditions, the instruments and the raw readings. A record: its readings are never changed. Which keys a run needs depends on its method; `meltbounds check` says what is missing.
 */
export interface Trial {
  /**
   * What this document is.
   */
  kind: 'trial';
  /**
   * Identifier; the path of the file follows from it.
   */
  id: string;
  /**
   * Bench method that the run followed: flowLadder (commanded flow against extruded mass), diameterSurvey (thickness along the filament), temperatureSweep (bond strength or grade against nozzle temperature), contourLadder (ripple or grade against contour speed), layerTime (grade against layer time), dryingCurve (mass against time in the dryer), soundLevel (sound at distances), referencePrint (time and mass of a job), motionTiming (times of moves to and fro), settingLadder (grade or size of a defect against a setting that is raised), setPointCheck (set temperatures against a thermometer).
   */
  method:
    | 'flowLadder'
    | 'diameterSurvey'
    | 'temperatureSweep'
    | 'contourLadder'
    | 'layerTime'
    | 'dryingCurve'
    | 'soundLevel'
    | 'referencePrint'
    | 'motionTiming'
    | 'settingLadder'
    | 'setPointCheck';
  /**
   * Whether the readings come from a bench or from a simulation.
   */
  origin: 'bench' | 'simulated';
  /**
   * Day of the run.
   */
  date: string;
  /**
   * Who ran it.
   */
  operator?: string;
  /**
   * Machine. Every method needs it but diameterSurvey and dryingCurve.
   */
  machine?: string;
  /**
   * Nozzle of that machine. Every method needs it but diameterSurvey, dryingCurve, soundLevel and motionTiming.
   */
  nozzle?: string;
  /**
   * Filament; of a soundLevel the one that was printed, of a motionTiming the one that was loaded.
   */
  filament: string;
  /**
   * Job that was printed; a referencePrint needs it.
   */
  job?: string;
  /**
   * How the machine was set for each kind of path of a referencePrint; with it `check` and `compare` compare the time model with the print.
   */
  settings?: {
    /**
     * Paths of firstLayer.
     */
    firstLayer?: {
      /**
       * Commanded speed.
       */
      speed: MillimetresPerSecond;
      /**
       * Acceleration along the path.
       */
      acceleration: MillimetresPerSecondSquared;
    };
    /**
     * Paths of outerContour.
     */
    outerContour?: {
      /**
       * Commanded speed.
       */
      speed: MillimetresPerSecond;
      /**
       * Acceleration along the path.
       */
      acceleration: MillimetresPerSecondSquared;
    };
    /**
     * Paths of innerContour.
     */
    innerContour?: {
      /**
       * Commanded speed.
       */
      speed: MillimetresPerSecond;
      /**
       * Acceleration along the path.
       */
      acceleration: MillimetresPerSecondSquared;
    };
    /**
     * Paths of infill.
     */
    infill?: {
      /**
       * Commanded speed.
       */
      speed: MillimetresPerSecond;
      /**
       * Acceleration along the path.
       */
      acceleration: MillimetresPerSecondSquared;
    };
    /**
     * Paths of topSurface.
     */
    topSurface?: {
      /**
       * Commanded speed.
       */
      speed: MillimetresPerSecond;
      /**
       * Acceleration along the path.
       */
      acceleration: MillimetresPerSecondSquared;
    };
    /**
     * Paths of bridge.
     */
    bridge?: {
      /**
       * Commanded speed.
       */
      speed: MillimetresPerSecond;
      /**
       * Acceleration along the path.
       */
      acceleration: MillimetresPerSecondSquared;
    };
    /**
     * Paths of overhang.
     */
    overhang?: {
      /**
       * Commanded speed.
       */
      speed: MillimetresPerSecond;
      /**
       * Acceleration along the path.
       */
      acceleration: MillimetresPerSecondSquared;
    };
    /**
     * Paths of travel.
     */
    travel?: {
      /**
       * Commanded speed.
       */
      speed: MillimetresPerSecond;
      /**
       * Acceleration along the path.
       */
      acceleration: MillimetresPerSecondSquared;
    };
  };
  /**
   * Batch printed on the spool.
   */
  batch?: string;
  /**
   * Version of the controller software during the run.
   */
  firmware?: string;
  /**
   * Conditions during the run.
   */
  conditions: {
    /**
     * Set temperature of the nozzle; a flowLadder needs it, a temperatureSweep has it as a column.
     */
    nozzleTemperature?: DegreesCelsius;
    /**
     * Temperature of the bed.
     */
    bedTemperature?: DegreesCelsius;
    /**
     * Temperature of the chamber.
     */
    chamberTemperature?: DegreesCelsius;
    /**
     * Temperature of the room.
     */
    ambientTemperature?: DegreesCelsius;
    /**
     * Relative humidity of the room.
     */
    relativeHumidity?: Fraction;
    /**
     * Height of the layers.
     */
    layerHeight?: Millimetres;
    /**
     * Acceleration of the axes, of a contourLadder or motionTiming that kept to one.
     */
    acceleration?: MillimetresPerSecondSquared;
    /**
     * Speed of printing, of a soundLevel.
     */
    printSpeed?: MillimetresPerSecond;
    /**
     * Share of the part cooling fan's full speed.
     */
    fan?: Fraction;
    /**
     * Set temperature of the dryer; a dryingCurve needs it.
     */
    dryingTemperature?: DegreesCelsius;
  };
  /**
   * Share of the flow that may be missing at the limit of a flowLadder; 5 % unless given.
   */
  acceptedDeficit?: Fraction;
  /**
   * Share of the best bond strength that must be left at the ends of the window of a temperatureSweep; 90 % unless given.
   */
  acceptedStrength?: Fraction;
  /**
   * Amplitude of the ripple that a contourLadder accepts, from crest to trough; needed where amplitudes were measured.
   */
  acceptedRipple?: Millimetres;
  /**
   * Size of the defect that a settingLadder accepts: length of strings, sag, bulge; needed where sizes were measured.
   */
  acceptedDefect?: Millimetres;
  /**
   * Lowest grade that passes, of 1 (useless) to 5 (faultless); 4 unless given. For methods whose readings are grades.
   */
  acceptedGrade?: number;
  /**
   * Water that may be left at the end of drying, as a share of the dry mass; a dryingCurve needs it.
   */
  residualMoisture?: Fraction;
  /**
   * Mass of the empty reel, where the masses of a dryingCurve hold it; without it the residual moisture counts against filament and reel.
   */
  reelMass?: Grams;
  /**
   * The scale that weighed the extruded pieces, the spool in the dryer or the print.
   */
  scale?: {
    /**
     * Smallest step of its display.
     */
    resolution: Grams;
    /**
     * What it is.
     */
    description?: string;
  };
  /**
   * Caliper, micrometer or profile gauge that measured lengths.
   */
  gauge?: {
    /**
     * Smallest step of its display.
     */
    resolution: Millimetres;
    /**
     * Largest error that its maker or its calibration states, either way.
     */
    accuracy?: Millimetres;
    /**
     * What it is.
     */
    description?: string;
  };
  /**
   * Sound level meter.
   */
  soundMeter?: {
    /**
     * Class of the meter by IEC 61672-1; unclassed where it has none.
     */
    class: 'class1' | 'class2' | 'unclassed';
    /**
     * Smallest step of its display.
     */
    resolution?: Decibels;
    /**
     * What it is.
     */
    description?: string;
  };
  /**
   * The clock that timed the moves of a motionTiming.
   */
  clock?: {
    /**
     * Smallest step of its display.
     */
    resolution: Seconds;
    /**
     * How much all its times may be too long or too short alike, as when a hand is late; 0.1 s unless given.
     */
    accuracy?: Seconds;
    /**
     * What it is.
     */
    description?: string;
  };
  /**
   * The reference thermometer of a setPointCheck.
   */
  thermometer?: {
    /**
     * Smallest step of its display.
     */
    resolution: Kelvins;
    /**
     * Largest error that its maker or its calibration states, either way; 2 K unless given.
     */
    accuracy?: Kelvins;
    /**
     * What it is.
     */
    description?: string;
  };
  /**
   * The reference hygrometer of a setPointCheck of humidity.
   */
  hygrometer?: {
    /**
     * Smallest step of its display, of relative humidity.
     */
    resolution: Fraction;
    /**
     * Largest error that its maker or its calibration states, either way, of relative humidity; 3 % unless given.
     */
    accuracy?: Fraction;
    /**
     * What it is.
     */
    description?: string;
  };
  /**
   * Part whose set temperature a setPointCheck checked; it needs it.
   */
  checkedPart?: 'nozzle' | 'bed' | 'chamber' | 'dryer';
  /**
   * How far settled readings of a setPointCheck may be from their mean; 2 K unless given.
   */
  settledWithin?: Kelvins;
  /**
   * Level of the room with the machine off, where no column gives it for every reading.
   */
  backgroundLevel?: Decibels;
  /**
   * By how much the walls raise the level at 1 m from the machine: K2 of ISO 3746 for a hemisphere of 1 m.
   */
  roomCorrection?: Decibels;
  /**
   * Relative standard uncertainty of the fed length.
   */
  feedLengthUncertainty?: Fraction;
  /**
   * The raw readings: written here as columns and rows, or in a CSV file beside the trial.
   */
  observations: {
    /**
     * Columns in the order of the rows, each with its unit. Columns of a flowLadder: commandedFlow, feedLength, extrudedMass; diameterSurvey: position, firstDiameter, secondDiameter; temperatureSweep: nozzleTemperature and bondStrength or grade; contourLadder: contourSpeed and rippleAmplitude or grade, acceleration if it varied; layerTime: layerTime, grade; dryingCurve: elapsedTime, mass; soundLevel: distance, soundLevel, background if it was read each time; referencePrint: printTime, mass if it was weighed; motionTiming: moveLength, commandedSpeed, moves, duration, acceleration if it varied, positionShift if the position was read; settingLadder: one of retractionLength, retractionSpeed, pressureCompensation, stickingSpeed, bridgeSpeed, overhangSpeed, fan, and defectSize or grade; setPointCheck: setTemperature and referenceTemperature, or setHumidity and referenceHumidity, elapsedTime if it was read.
     */
    columns?: {
      /**
       * Flow that the machine was told to deliver.
       */
      commandedFlow?: string;
      /**
       * Length of filament fed in the step.
       */
      feedLength?: string;
      /**
       * Mass of what came out.
       */
      extrudedMass?: string;
      /**
       * Place along the filament, of a diameterSurvey.
       */
      position?: string;
      /**
       * Thickness of the filament across one axis.
       */
      firstDiameter?: string;
      /**
       * Thickness of the filament across the other axis, at a right angle to the first.
       */
      secondDiameter?: string;
      /**
       * Nozzle temperature of a specimen, of a temperatureSweep.
       */
      nozzleTemperature?: string;
      /**
       * Strength between the layers at which the specimen broke.
       */
      bondStrength?: string;
      /**
       * Grade of a specimen, from 1 (useless) to 5 (faultless).
       */
      grade?: string;
      /**
       * Speed along the contour, of a contourLadder.
       */
      contourSpeed?: string;
      /**
       * Commanded acceleration of the axes, where a contourLadder or motionTiming tried several.
       */
      acceleration?: string;
      /**
       * Ripple of the surface behind a corner, from crest to trough.
       */
      rippleAmplitude?: string;
      /**
       * Time between the starts of two layers, of a layerTime series.
       */
      layerTime?: string;
      /**
       * Time since the drying began, or since the set temperature of a setPointCheck was given.
       */
      elapsedTime?: string;
      /**
       * Mass of the spool in the dryer, or of the print.
       */
      mass?: string;
      /**
       * Distance from the source to the microphone, of a soundLevel.
       */
      distance?: string;
      /**
       * A-weighted sound pressure level there, averaged over the reading.
       */
      soundLevel?: string;
      /**
       * A-weighted level at the same place with the machine off.
       */
      background?: string;
      /**
       * Time from the first to the last movement of the print.
       */
      printTime?: string;
      /**
       * Length of one move from stop to stop, of a motionTiming.
       */
      moveLength?: string;
      /**
       * Speed that the moves of a motionTiming were commanded at.
       */
      commandedSpeed?: string;
      /**
       * Number of moves; to and fro are two.
       */
      moves?: string;
      /**
       * Time that all these moves took together.
       */
      duration?: string;
      /**
       * By how far the position was off afterwards, against before.
       */
      positionShift?: string;
      /**
       * Length by which the filament was drawn back, of a settingLadder.
       */
      retractionLength?: string;
      /**
       * Speed at which the filament was drawn back, of a settingLadder.
       */
      retractionSpeed?: string;
      /**
       * Time constant by which the feed ran ahead of the speed, of a settingLadder.
       */
      pressureCompensation?: string;
      /**
       * Speed of the first layer, of a settingLadder.
       */
      stickingSpeed?: string;
      /**
       * Speed of a bridge, of a settingLadder.
       */
      bridgeSpeed?: string;
      /**
       * Speed of an overhang, of a settingLadder.
       */
      overhangSpeed?: string;
      /**
       * Share of the part cooling fan's full speed, of a settingLadder.
       */
      fan?: string;
      /**
       * Size of the defect of a specimen: length of strings, sag, bulge.
       */
      defectSize?: string;
      /**
       * Temperature that a part was set to, of a setPointCheck.
       */
      setTemperature?: string;
      /**
       * Temperature that the reference thermometer showed.
       */
      referenceTemperature?: string;
      /**
       * Relative humidity that a part was set to, or shows itself, of a setPointCheck.
       */
      setHumidity?: string;
      /**
       * Relative humidity that the reference hygrometer showed.
       */
      referenceHumidity?: string;
    };
    /**
     * Readings, one row a step and repeat, in the order of the columns.
     *
     * @minItems 1
     * @maxItems 2000
     */
    rows?: number[][];
    /**
     * Name of a CSV file (RFC 4180, headers `name [unit]`) in the same folder.
     */
    file?: string;
  };
  /**
   * What interrupted the run.
   *
   * @minItems 1
   * @maxItems 200
   *
   * Items: One event.
   */
  events?: {
    /**
     * What happened: the machine stopped, or the drive ground the filament.
     */
    event: 'halted' | 'stripped';
    /**
     * Commanded flow at that moment.
     */
    commandedFlow: CubicMillimetresPerSecond;
    /**
     * More about it.
     */
    note?: string;
  }[];
  /**
   * What a reader must know about the document as a whole, for instance that it is invented.
   */
  notice?: string;
  /**
   * Dated notes from use: what happened, its effect, the way round it.
   */
  fieldNotes?: readonly FieldNote[];
  /**
   * Findings that a reviewer has accepted, each until a date.
   */
  acknowledged?: readonly Acknowledgement[];
}

/**
 * House rules that turn limits into settings: accepted deficit, margins, fractions by feature, rounding.
 */
export interface Policy {
  /**
   * What this document is.
   */
  kind: 'policy';
  /**
   * Identifier; the path of the file follows from it.
   */
  id: string;
  /**
   * Version of this profile (semantic versioning).
   */
  version: string;
  /**
   * Name of the policy.
   */
  name: string;
  /**
   * Share of the flow that may be missing at the limit.
   */
  acceptedDeficit: Fraction;
  /**
   * Share of the measured flow limit that is held back.
   */
  flowMargin: Fraction;
  /**
   * Width of a 95 % interval, as a share of the limit, at which the bench may stop feeding pieces; 5 % unless given.
   */
  intervalWidth?: Fraction;
  /**
   * How far the nozzle stays below the limit of the hot end; 0 K unless given.
   */
  hotEndMargin?: Kelvins;
  /**
   * How far a dryer stays below the softening of the filament; 0 K unless given.
   */
  dryingMargin?: Kelvins;
  /**
   * The weakest basis on which a limit may rest, and what becomes of one that rests on less; a limit that is not named here is used as it stands.
   */
  minimumBasis?: {
    /**
     * The weakest basis of a melt flow limit.
     */
    meltFlow?: {
      /**
       * The weakest basis that is used as it stands.
       */
      basis: 'measured' | 'published' | 'derived' | 'claimed' | 'assumed';
      /**
       * What becomes of a weaker number: the table is refused, only a share of the number is used, or the number is used and its rows are flagged.
       */
      weaker: 'refuse' | 'cap' | 'flag';
      /**
       * Share of a weaker number that is used; a time is divided by it. Needed with cap.
       */
      share?: Fraction;
    };
    /**
     * The weakest basis of a top speed.
     */
    topSpeed?: {
      /**
       * The weakest basis that is used as it stands.
       */
      basis: 'measured' | 'published' | 'derived' | 'claimed' | 'assumed';
      /**
       * What becomes of a weaker number: the table is refused, only a share of the number is used, or the number is used and its rows are flagged.
       */
      weaker: 'refuse' | 'cap' | 'flag';
      /**
       * Share of a weaker number that is used; a time is divided by it. Needed with cap.
       */
      share?: Fraction;
    };
    /**
     * The weakest basis of an acceleration.
     */
    acceleration?: {
      /**
       * The weakest basis that is used as it stands.
       */
      basis: 'measured' | 'published' | 'derived' | 'claimed' | 'assumed';
      /**
       * What becomes of a weaker number: the table is refused, only a share of the number is used, or the number is used and its rows are flagged.
       */
      weaker: 'refuse' | 'cap' | 'flag';
      /**
       * Share of a weaker number that is used; a time is divided by it. Needed with cap.
       */
      share?: Fraction;
    };
    /**
     * The weakest basis of a contour speed.
     */
    contourSpeed?: {
      /**
       * The weakest basis that is used as it stands.
       */
      basis: 'measured' | 'published' | 'derived' | 'claimed' | 'assumed';
      /**
       * What becomes of a weaker number: the table is refused, only a share of the number is used, or the number is used and its rows are flagged.
       */
      weaker: 'refuse' | 'cap' | 'flag';
      /**
       * Share of a weaker number that is used; a time is divided by it. Needed with cap.
       */
      share?: Fraction;
    };
    /**
     * The weakest basis of a shortest layer time.
     */
    shortestLayerTime?: {
      /**
       * The weakest basis that is used as it stands.
       */
      basis: 'measured' | 'published' | 'derived' | 'claimed' | 'assumed';
      /**
       * What becomes of a weaker number: the table is refused, only a share of the number is used, or the number is used and its rows are flagged.
       */
      weaker: 'refuse' | 'cap' | 'flag';
      /**
       * Share of a weaker number that is used; a time is divided by it. Needed with cap.
       */
      share?: Fraction;
    };
  };
  /**
   * By which rule of JCGM 106:2012 `claims` and `match` compare a measured value with a claim: with a guard band as wide as its expanded uncertainty (8.3), or by the measured value alone (8.2); guardedAcceptance unless given.
   */
  decisionRule?: 'guardedAcceptance' | 'simpleAcceptance';
  /**
   * Share of the top speed of a path that each feature uses.
   */
  fractions: {
    /**
     * Share of the top speed for firstLayer.
     */
    firstLayer: Fraction;
    /**
     * Share of the top speed for outerContour.
     */
    outerContour: Fraction;
    /**
     * Share of the top speed for innerContour.
     */
    innerContour: Fraction;
    /**
     * Share of the top speed for infill.
     */
    infill: Fraction;
    /**
     * Share of the top speed for topSurface.
     */
    topSurface: Fraction;
    /**
     * Share of the top speed for bridge.
     */
    bridge: Fraction;
    /**
     * Share of the top speed for overhang.
     */
    overhang: Fraction;
    /**
     * Share of the top speed for travel.
     */
    travel: Fraction;
  };
  /**
   * Share of the acceleration of the machine that each feature uses.
   */
  accelerationFractions: {
    /**
     * Share of the acceleration for firstLayer.
     */
    firstLayer: Fraction;
    /**
     * Share of the acceleration for outerContour.
     */
    outerContour: Fraction;
    /**
     * Share of the acceleration for innerContour.
     */
    innerContour: Fraction;
    /**
     * Share of the acceleration for infill.
     */
    infill: Fraction;
    /**
     * Share of the acceleration for topSurface.
     */
    topSurface: Fraction;
    /**
     * Share of the acceleration for bridge.
     */
    bridge: Fraction;
    /**
     * Share of the acceleration for overhang.
     */
    overhang: Fraction;
    /**
     * Share of the acceleration for travel.
     */
    travel: Fraction;
  };
  /**
   * Typical length between two stops, by feature: what motion can reach depends on it.
   */
  typicalSegments: {
    /**
     * Typical segment of firstLayer.
     */
    firstLayer: Millimetres;
    /**
     * Typical segment of outerContour.
     */
    outerContour: Millimetres;
    /**
     * Typical segment of innerContour.
     */
    innerContour: Millimetres;
    /**
     * Typical segment of infill.
     */
    infill: Millimetres;
    /**
     * Typical segment of topSurface.
     */
    topSurface: Millimetres;
    /**
     * Typical segment of bridge.
     */
    bridge: Millimetres;
    /**
     * Typical segment of overhang.
     */
    overhang: Millimetres;
    /**
     * Typical segment of travel.
     */
    travel: Millimetres;
  };
  /**
   * The one nozzle temperature of a table: of the tested ones that with the largest flow, the lowest, or a temperature of your own inside of what was tested; largestFlow unless given.
   */
  nozzleTemperature?: string;
  /**
   * Outright caps on speed and acceleration, by feature: adhesion and sag are no matter of melting.
   */
  caps?: {
    /**
     * Most that firstLayer is printed at, whatever melts.
     */
    firstLayer?: {
      /**
       * Most speed.
       */
      speed?: MillimetresPerSecond;
      /**
       * Most acceleration.
       */
      acceleration?: MillimetresPerSecondSquared;
      /**
       * Why the house caps it.
       */
      reason: string;
    };
    /**
     * Most that outerContour is printed at, whatever melts.
     */
    outerContour?: {
      /**
       * Most speed.
       */
      speed?: MillimetresPerSecond;
      /**
       * Most acceleration.
       */
      acceleration?: MillimetresPerSecondSquared;
      /**
       * Why the house caps it.
       */
      reason: string;
    };
    /**
     * Most that innerContour is printed at, whatever melts.
     */
    innerContour?: {
      /**
       * Most speed.
       */
      speed?: MillimetresPerSecond;
      /**
       * Most acceleration.
       */
      acceleration?: MillimetresPerSecondSquared;
      /**
       * Why the house caps it.
       */
      reason: string;
    };
    /**
     * Most that infill is printed at, whatever melts.
     */
    infill?: {
      /**
       * Most speed.
       */
      speed?: MillimetresPerSecond;
      /**
       * Most acceleration.
       */
      acceleration?: MillimetresPerSecondSquared;
      /**
       * Why the house caps it.
       */
      reason: string;
    };
    /**
     * Most that topSurface is printed at, whatever melts.
     */
    topSurface?: {
      /**
       * Most speed.
       */
      speed?: MillimetresPerSecond;
      /**
       * Most acceleration.
       */
      acceleration?: MillimetresPerSecondSquared;
      /**
       * Why the house caps it.
       */
      reason: string;
    };
    /**
     * Most that bridge is printed at, whatever melts.
     */
    bridge?: {
      /**
       * Most speed.
       */
      speed?: MillimetresPerSecond;
      /**
       * Most acceleration.
       */
      acceleration?: MillimetresPerSecondSquared;
      /**
       * Why the house caps it.
       */
      reason: string;
    };
    /**
     * Most that overhang is printed at, whatever melts.
     */
    overhang?: {
      /**
       * Most speed.
       */
      speed?: MillimetresPerSecond;
      /**
       * Most acceleration.
       */
      acceleration?: MillimetresPerSecondSquared;
      /**
       * Why the house caps it.
       */
      reason: string;
    };
    /**
     * Most that travel is printed at, whatever melts.
     */
    travel?: {
      /**
       * Most speed.
       */
      speed?: MillimetresPerSecond;
      /**
       * Most acceleration.
       */
      acceleration?: MillimetresPerSecondSquared;
      /**
       * Why the house caps it.
       */
      reason: string;
    };
  };
  /**
   * Part-cooling fan that the house wants, by feature; tables keep it inside of the window of the filament, and off on the first layer is always allowed.
   */
  fan?: {
    /**
     * Fan wanted for firstLayer.
     */
    firstLayer?: Fraction;
    /**
     * Fan wanted for outerContour.
     */
    outerContour?: Fraction;
    /**
     * Fan wanted for innerContour.
     */
    innerContour?: Fraction;
    /**
     * Fan wanted for infill.
     */
    infill?: Fraction;
    /**
     * Fan wanted for topSurface.
     */
    topSurface?: Fraction;
    /**
     * Fan wanted for bridge.
     */
    bridge?: Fraction;
    /**
     * Fan wanted for overhang.
     */
    overhang?: Fraction;
  };
  /**
   * Retraction that the house uses where the bench has found none for the filament.
   */
  retraction?: {
    /**
     * Length of filament that is drawn back before a travel move.
     */
    length: Millimetres;
    /**
     * Speed at which it is drawn back.
     */
    speed: MillimetresPerSecond;
    /**
     * Why the house does so.
     */
    reason: string;
  };
  /**
   * Length of path in the smallest layer that the tables shall serve: with the shortest layer time it bounds the speed.
   */
  layerPath: Millimetres;
  /**
   * Layer heights, as shares of the nozzle diameter.
   *
   * @minItems 1
   * @maxItems 12
   *
   * Items: A layer height.
   */
  layerHeights: Fraction[];
  /**
   * Line widths, as shares of the nozzle diameter.
   *
   * @minItems 1
   * @maxItems 12
   *
   * Items: A line width.
   */
  lineWidths: Fraction[];
  /**
   * Steps to which table values are rounded, always to the safe side.
   */
  rounding: {
    /**
     * Step of speeds.
     */
    speed: MillimetresPerSecond;
    /**
     * Step of flows.
     */
    flow: CubicMillimetresPerSecond;
    /**
     * Step of accelerations.
     */
    acceleration: MillimetresPerSecondSquared;
    /**
     * Step of run-up lengths.
     */
    runUp: Millimetres;
    /**
     * Step of temperatures; 1 K unless given.
     */
    temperature?: Kelvins;
    /**
     * Step of times; 1 s unless given.
     */
    time?: Seconds;
  };
  /**
   * Present where the document is invented: no such thing is made, sold or published. Whatever rests on it says so.
   */
  invented?: true;
  /**
   * What a reader must know about the document as a whole, for instance that it is invented.
   */
  notice?: string;
  /**
   * Dated notes from use: what happened, its effect, the way round it.
   */
  fieldNotes?: readonly FieldNote[];
  /**
   * Findings that a reviewer has accepted, each until a date.
   */
  acknowledged?: readonly Acknowledgement[];
}

/**
 * What a part asks for: for each feature the length of path, the length between stops and the bead.
 */
export interface Job {
  /**
   * What this document is.
   */
  kind: 'job';
  /**
   * Identifier; the path of the file follows from it.
   */
  id: string;
  /**
   * Version of this profile (semantic versioning).
   */
  version: string;
  /**
   * Name of the part.
   */
  name: string;
  /**
   * Number of layers.
   */
  layers: Count;
  /**
   * Typical corner between two segments of a printed path; a right angle followed within 0.05 mm unless given. `compare` reckons how fast the head passes it.
   */
  corners?: {
    /**
     * By how much the direction changes: 0 deg goes straight on, 180 deg comes straight back.
     */
    deflection: Degrees;
    /**
     * Largest distance between the corner and the way that the head takes.
     */
    tolerance: Millimetres;
  };
  /**
   * The paths of the part, by feature.
   */
  features: {
    /**
     * Paths of firstLayer.
     */
    firstLayer?: {
      /**
       * Total length of the paths.
       */
      pathLength: Millimetres;
      /**
       * Mean length between two stops or sharp corners.
       */
      meanSegment: Millimetres;
      /**
       * Layer height.
       */
      layerHeight: Millimetres;
      /**
       * Line width.
       */
      lineWidth: Millimetres;
    };
    /**
     * Paths of outerContour.
     */
    outerContour?: {
      /**
       * Total length of the paths.
       */
      pathLength: Millimetres;
      /**
       * Mean length between two stops or sharp corners.
       */
      meanSegment: Millimetres;
      /**
       * Layer height.
       */
      layerHeight: Millimetres;
      /**
       * Line width.
       */
      lineWidth: Millimetres;
    };
    /**
     * Paths of innerContour.
     */
    innerContour?: {
      /**
       * Total length of the paths.
       */
      pathLength: Millimetres;
      /**
       * Mean length between two stops or sharp corners.
       */
      meanSegment: Millimetres;
      /**
       * Layer height.
       */
      layerHeight: Millimetres;
      /**
       * Line width.
       */
      lineWidth: Millimetres;
    };
    /**
     * Paths of infill.
     */
    infill?: {
      /**
       * Total length of the paths.
       */
      pathLength: Millimetres;
      /**
       * Mean length between two stops or sharp corners.
       */
      meanSegment: Millimetres;
      /**
       * Layer height.
       */
      layerHeight: Millimetres;
      /**
       * Line width.
       */
      lineWidth: Millimetres;
    };
    /**
     * Paths of topSurface.
     */
    topSurface?: {
      /**
       * Total length of the paths.
       */
      pathLength: Millimetres;
      /**
       * Mean length between two stops or sharp corners.
       */
      meanSegment: Millimetres;
      /**
       * Layer height.
       */
      layerHeight: Millimetres;
      /**
       * Line width.
       */
      lineWidth: Millimetres;
    };
    /**
     * Paths of bridge.
     */
    bridge?: {
      /**
       * Total length of the paths.
       */
      pathLength: Millimetres;
      /**
       * Mean length between two stops or sharp corners.
       */
      meanSegment: Millimetres;
      /**
       * Layer height.
       */
      layerHeight: Millimetres;
      /**
       * Line width.
       */
      lineWidth: Millimetres;
    };
    /**
     * Paths of overhang.
     */
    overhang?: {
      /**
       * Total length of the paths.
       */
      pathLength: Millimetres;
      /**
       * Mean length between two stops or sharp corners.
       */
      meanSegment: Millimetres;
      /**
       * Layer height.
       */
      layerHeight: Millimetres;
      /**
       * Line width.
       */
      lineWidth: Millimetres;
    };
    /**
     * Moves without extrusion.
     */
    travel?: {
      /**
       * Total length of the moves.
       */
      pathLength: Millimetres;
      /**
       * Mean length of a move.
       */
      meanSegment: Millimetres;
    };
  };
  /**
   * Present where the document is invented: no such thing is made, sold or published. Whatever rests on it says so.
   */
  invented?: true;
  /**
   * What a reader must know about the document as a whole, for instance that it is invented.
   */
  notice?: string;
  /**
   * Dated notes from use: what happened, its effect, the way round it.
   */
  fieldNotes?: readonly FieldNote[];
  /**
   * Findings that a reviewer has accepted, each until a date.
   */
  acknowledged?: readonly Acknowledgement[];
}

/**
 * A citation. The bibliographic keys are the variables of CSL-JSON, so that sources export to reference managers.
 */
export interface Source {
  /**
   * What this document is.
   */
  kind: 'source';
  /**
   * Identifier; the path of the file follows from it.
   */
  id: string;
  /**
   * Type of the item, by CSL-JSON.
   */
  type:
    | 'article'
    | 'article-journal'
    | 'book'
    | 'chapter'
    | 'dataset'
    | 'document'
    | 'legislation'
    | 'paper-conference'
    | 'patent'
    | 'report'
    | 'software'
    | 'standard'
    | 'thesis'
    | 'webpage';
  /**
   * Title.
   */
  title: string;
  /**
   * Authors.
   *
   * @minItems 1
   * @maxItems 200
   *
   * Items: A person by family and given name, or an organisation as literal.
   */
  author?: {
    /**
     * Family name.
     */
    family?: string;
    /**
     * Given names or initials.
     */
    given?: string;
    /**
     * Name of an organisation.
     */
    literal?: string;
  }[];
  /**
   * Editors.
   *
   * @minItems 1
   * @maxItems 200
   *
   * Items: A person by family and given name, or an organisation as literal.
   */
  editor?: {
    /**
     * Family name.
     */
    family?: string;
    /**
     * Given names or initials.
     */
    given?: string;
    /**
     * Name of an organisation.
     */
    literal?: string;
  }[];
  /**
   * When it was issued.
   */
  issued?: {
    /**
     * The date as CSL-JSON writes it.
     *
     * @minItems 1
     * @maxItems 1
     */
    'date-parts': number[][];
  };
  /**
   * When it was read.
   */
  accessed?: {
    /**
     * The date as CSL-JSON writes it.
     *
     * @minItems 1
     * @maxItems 1
     */
    'date-parts': number[][];
  };
  /**
   * Edition.
   */
  edition?: string;
  /**
   * Publisher.
   */
  publisher?: string;
  /**
   * Place of the publisher.
   */
  'publisher-place'?: string;
  /**
   * Journal or collection in which it stands.
   */
  'container-title'?: string;
  /**
   * Volume.
   */
  volume?: string;
  /**
   * Issue.
   */
  issue?: string;
  /**
   * Pages.
   */
  page?: string;
  /**
   * Number of a report or standard.
   */
  number?: string;
  /**
   * Digital object identifier.
   */
  DOI?: string;
  /**
   * International standard book number.
   */
  ISBN?: string;
  /**
   * International standard serial number.
   */
  ISSN?: string;
  /**
   * Where it can be read.
   */
  URL?: string;
  /**
   * Part of the item that is meant: table, section, page.
   */
  locator?: string;
  /**
   * Licence under which its data may be used.
   */
  license?: string;
  /**
   * More about it.
   */
  note?: string;
  /**
   * How the registry knows it: read in full or in part, read as quoted by another, or recalled and still to be looked up.
   */
  standing: 'read' | 'secondary' | 'recalled';
  /**
   * Present where the document is invented: no such thing is made, sold or published. Whatever rests on it says so.
   */
  invented?: true;
  /**
   * What a reader must know about the document as a whole, for instance that it is invented.
   */
  notice?: string;
  /**
   * Findings that a reviewer has accepted, each until a date.
   */
  acknowledged?: readonly Acknowledgement[];
}

/**
 * Measurements of one's own that are added to a filament of another registry, without a copy of it. It holds limits that trials have shown, and nothing that could replace what the filament states: temperatures, drying and cooling stay those of its profile.
 */
export interface Addition {
  /**
   * What this document is.
   */
  kind: 'addition';
  /**
   * Identifier; the path of the file follows from it.
   */
  id: string;
  /**
   * Version of this document (semantic versioning).
   */
  version: string;
  /**
   * Filament that the measurements are added to.
   */
  filament: string;
  /**
   * Shortest time for a layer in which it still holds its shape.
   */
  shortestLayerTime?: readonly Statement<Seconds>[];
  /**
   * Length of filament that is drawn back before a travel move.
   */
  retractionLength?: readonly Statement<Millimetres>[];
  /**
   * Speed at which the filament is drawn back.
   */
  retractionSpeed?: readonly Statement<MillimetresPerSecond>[];
  /**
   * Time constant by which the feed runs ahead of the speed, so that the pressure in the nozzle follows it.
   */
  pressureCompensation?: readonly Statement<Seconds>[];
  /**
   * Highest flow that a machine and nozzle deliver within the accepted deficit.
   */
  meltFlow?: readonly Statement<CubicMillimetresPerSecond>[];
  /**
   * Highest speed of the first layer at which it still sticks.
   */
  stickingSpeed?: readonly Statement<MillimetresPerSecond>[];
  /**
   * Highest speed at which a bridge still holds.
   */
  bridgeSpeed?: readonly Statement<MillimetresPerSecond>[];
  /**
   * Highest speed at which an overhang still holds its shape.
   */
  overhangSpeed?: readonly Statement<MillimetresPerSecond>[];
  /**
   * Highest contour speed whose surface still passes.
   */
  contourSpeed?: readonly Statement<MillimetresPerSecond>[];
  /**
   * Present where the document is invented: no such thing is made, sold or published. Whatever rests on it says so.
   */
  invented?: true;
  /**
   * What a reader must know about the document as a whole, for instance that it is invented.
   */
  notice?: string;
  /**
   * Dated notes from use: what happened, its effect, the way round it.
   */
  fieldNotes?: readonly FieldNote[];
  /**
   * Findings that a reviewer has accepted, each until a date.
   */
  acknowledged?: readonly Acknowledgement[];
}
