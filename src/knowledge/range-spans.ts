/** How far apart the ends of one stated range may be: by a factor, or by a difference in K. */
export type RangeSpan = { readonly factor: number } | { readonly kelvin: number };

/** Spans of the ranges that sources state of one family or one product, by kind and property. */
export const rangeSpans: Readonly<Record<'polymer' | 'filament', Readonly<Record<string, RangeSpan>>>> = {
  polymer: {
    density: { factor: 1.6 },
    glassTransition: { kelvin: 45 },
    melting: { kelvin: 110 },
    specificHeatSolid: { factor: 2 },
    specificHeatMelt: { factor: 2 },
    thermalConductivity: { factor: 2.3 },
    heatOfFusion: { factor: 6 },
    decomposition: { kelvin: 250 },
    moistureEquilibrium: { factor: 6 },
    moistureSaturated: { factor: 6 },
    dryingTemperature: { kelvin: 70 },
    dryingTime: { factor: 9 },
    nozzleTemperature: { kelvin: 120 },
  },
  filament: {
    nozzleTemperature: { kelvin: 120 },
    bedTemperature: { kelvin: 70 },
    chamberTemperature: { kelvin: 100 },
  },
};
