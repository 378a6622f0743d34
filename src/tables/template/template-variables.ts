/** A variable that a template may use, as its documentation says it. */
export interface TemplateVariable {
  readonly name: string;
  /** `list` repeats a section with the variables of each item, `texts` with `{{.}}` as the text. */
  readonly kind: 'text' | 'number' | 'yesNo' | 'texts' | 'list';
  /** UCUM code of a number. */
  readonly unit?: string;
  readonly description: string;
  /** As the template writes it. */
  readonly example: string;
  /** The variables of each item of a list. */
  readonly items?: readonly TemplateVariable[];
}

function text(name: string, description: string, example: string): TemplateVariable {
  return { name, kind: 'text', description, example };
}

function number(name: string, unit: string, description: string, example: string): TemplateVariable {
  return { name, kind: 'number', unit, description, example };
}

function yesNo(name: string, description: string): TemplateVariable {
  return { name, kind: 'yesNo', description, example: 'true' };
}

const place: readonly TemplateVariable[] = [
  yesNo('isFirst', 'Whether it is the first of its list'),
  yesNo('isLast', 'Whether it is the last of its list, to leave out a comma'),
];

const rowItems: readonly TemplateVariable[] = [
  text('feature', 'Feature of the printed part', 'outerContour'),
  text('featureWords', 'The same in words', 'outer contour'),
  number('layerHeight', 'mm', 'Layer height', '0.3'),
  number('lineWidth', 'mm', 'Line width', '0.66'),
  number('speed', 'mm/s', 'Speed of the nozzle along the path', '130'),
  number('flow', 'mm3/s', 'Volume flow of melt at that speed; 0 on travel moves', '23.3'),
  number('acceleration', 'mm/s2', 'Acceleration along the path', '4100'),
  text(
    'bound',
    'What limits the speed there: melt, traction, motion, cooling, machine, quality or policy',
    'melt',
  ),
  number('nozzleTemperature', 'Cel', 'Nozzle temperature of the table, or of its first layer', '230'),
  number('fan', '%', 'Part-cooling fan; empty where it is not known, and on travel moves', '80'),
  number('runUp', 'mm', 'Length in which the speed is reached from a stop', '1.3'),
  text(
    'basis',
    'What the speed rests on: measured, published, derived, claimed or assumed; empty under a cap',
    'measured',
  ),
  { name: 'flags', kind: 'texts', description: 'What a reader must know of the row', example: 'weakBasis' },
  text('nextBound', 'What would limit the speed next; empty where nothing else is known', 'cooling'),
  number('nextSlack', '%', 'How much faster the next bound lets the feature go', '20.7'),
  text('address', 'How `--explain` names the row', 'infill@0.3x0.66'),
  text('line', 'The row as a line of text whose columns line up under `rowHeadings`', 'firstLayer …'),
  yesNo('isPrinted', 'Whether the nozzle delivers melt: not on travel moves'),
  ...place,
];

const conditionItems: readonly TemplateVariable[] = [
  text('condition', 'What is to be set, or known', 'bedTemperature'),
  text('conditionWords', 'The same in words', 'bed temperature'),
  number(
    'flow',
    'mm3/s',
    'Flow that the temperature feeds, or at which the spool empties; may be empty',
    '23.4',
  ),
  number('low', 'in `unit`', 'Least value; empty where none is stated or safe', '230'),
  number('high', 'in `unit`', 'Largest value; empty where none is stated or safe', '230'),
  yesNo('hasWindow', 'Whether there is a window; not where no value is stated or safe'),
  yesNo('isStated', 'Whether a profile states it'),
  number(
    'familyLow',
    'in `unit`',
    'Least value published of the family, where the filament states none',
    '45',
  ),
  number('familyHigh', 'in `unit`', 'Largest such value', '50'),
  text('unit', 'UCUM unit of `low` and `high`', 'Cel'),
  text('setting', 'Window with its unit as print writes it', '230 °C'),
  text('basis', 'What it rests on; empty for a bare fact', 'claimed'),
  {
    name: 'flags',
    kind: 'texts',
    description: 'What a reader must know of the numbers',
    example: 'weakBasis',
  },
  text('restsOn', 'Sources and trials of the numbers', 'trial wren-daisy-pla-230'),
  text('note', 'What to mind; may be empty', 'At the largest flow of the table without a pause.'),
  text(
    'line',
    'The condition as a line of text whose columns line up under `conditionHeadings`',
    'nozzleTemperature …',
  ),
  ...place,
];

const inputItems: readonly TemplateVariable[] = [
  text('kind', 'Kind of the document', 'machine'),
  text('id', 'Its id', 'plumstead/wren'),
  text('version', 'Its version; empty for a trial', '1.0.0'),
  text('digest', 'SHA-256 of its file, 64 hexadecimal digits', '…'),
  ...place,
];

function list(name: string, description: string, items: readonly TemplateVariable[]): TemplateVariable {
  return { name, kind: 'list', description, example: `{{#${name}}} … {{/${name}}}`, items };
}

const rows = list('rows', 'Every row of the table', rowItems);

/** Every variable that a template may use. */
export const templateVariables: readonly TemplateVariable[] = [
  text(
    'title',
    'Pairing and policy in one line',
    'oakhollow/daisy-pla on plumstead/wren, nozzle hs-0.6, policy house',
  ),
  text('machine', 'Id of the machine', 'plumstead/wren'),
  text('nozzle', 'Id of the nozzle', 'hs-0.6'),
  number('nozzleDiameter', 'mm', 'Diameter of the nozzle', '0.6'),
  text('filament', 'Id of the filament', 'oakhollow/daisy-pla'),
  text('policy', 'Id of the policy', 'house'),
  number('printTemperature', 'Cel', 'The one nozzle temperature of the table', '230'),
  number('firstLayerNozzle', 'Cel', 'Nozzle temperature of the first layer', '215'),
  text('chosenBy', 'Whose choice the temperature is', 'of those tested the one …'),
  number('flowLimit', 'mm3/s', 'Largest flow at that temperature', '26'),
  text('flowBasis', 'What it rests on, and whether that was simulated', 'measured (simulated)'),
  number('largestFlow', 'mm3/s', 'What the house uses of it', '23.4'),
  list('caps', 'Outright caps of the policy that some row obeys', [
    text('feature', 'Feature of the printed part', 'firstLayer'),
    text('featureWords', 'The same in words', 'first layer'),
    number('speed', 'mm/s', 'Most speed; empty where it is not capped', '40'),
    number('acceleration', 'mm/s2', 'Most acceleration; empty where it is not capped', '1000'),
    text('reason', 'Why', 'Adhesion to the bed'),
    ...place,
  ]),
  text('rowHeadings', 'Headings over the `line` of every row', 'feature …'),
  text('conditionHeadings', 'Headings over the `line` of every condition', 'condition …'),
  rows,
  list('features', 'The rows by feature', [
    text('feature', 'Feature of the printed part', 'outerContour'),
    text('featureWords', 'The same in words', 'outer contour'),
    { ...rows, description: 'Its rows' },
    ...place,
  ]),
  list('beads', 'The rows by layer height and line width', [
    number('layerHeight', 'mm', 'Layer height', '0.3'),
    number('lineWidth', 'mm', 'Line width', '0.66'),
    { ...rows, description: 'Its rows, one a feature' },
    ...place,
  ]),
  list('conditions', 'Temperatures, cooling, drying and spool life', conditionItems),
  text('origin', 'That readings are simulated or profiles invented; empty where all is real', 'Simulated …'),
  {
    name: 'quirks',
    kind: 'texts',
    description: 'Field notes of the bench, the newest first',
    example: '2026-02-12, …',
  },
  {
    name: 'warnings',
    kind: 'texts',
    description: 'What to know about the numbers',
    example: 'What limits some rows …',
  },
  {
    name: 'cautions',
    kind: 'texts',
    description: 'What must stand on every sheet',
    example: 'Hot ends burn, …',
  },
  list('inputs', 'Documents that the table was derived from', inputItems),
];
