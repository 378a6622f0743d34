import { basesByStrength } from '../../registry/statement.ts';
import { element, type Markup } from '../../text/html-element.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import type { CataloguedPairing } from '../catalogued-pairing.ts';
import { materialWords } from '../find/find-pairings.ts';

/** Fields of the question, hidden until the script that answers it runs. */
export function findForm(pairings: readonly CataloguedPairing[]): Markup {
  const of = <Value>(key: (pairing: CataloguedPairing) => Value) =>
    [...new Set(pairings.map(key))].sort((one, other) => (one < other ? -1 : 1));
  const currencies = of(({ price }) => price?.currency ?? '').filter((code) => code !== '');
  const any = ['', 'any'] as const;
  return element('form', { id: 'find', class: 'find', hidden: true, role: 'search', 'aria-label': 'Find' }, [
    element('p', {}, [
      label('search', 'Search: filament, machine, polymer, quirk, rule'),
      input('search', 'search'),
    ]),
    element('ul', { id: 'matches', class: 'matches' }),
    element('fieldset', {}, [
      element('legend', {}, ['Find by target']),
      field(
        'policy',
        'House rules',
        select(
          'policy',
          of(({ policy }) => policy).map((each) => [each, each] as const),
        ),
      ),
      field('flow', `Flow at least, ${printedUnit('mm3/s')}`, input('flow')),
      field('temperature', 'Nozzle at most, °C', input('temperature')),
      field(
        'material',
        'Nozzle',
        select('material', [
          any,
          ...of(({ nozzleMaterial }) => nozzleMaterial).map((each) => [each, materialWords(each)] as const),
        ]),
      ),
      field(
        'diameter',
        'Diameter, mm',
        select('diameter', [
          any,
          ...of(({ nozzleDiameter }) => nozzleDiameter).map((each) => [String(each), String(each)] as const),
        ]),
      ),
      field(
        'polymer',
        'Polymer',
        select('polymer', [any, ...of(({ polymer }) => polymer).map((each) => [each, each] as const)]),
      ),
      field(
        'basis',
        'Basis at least',
        select('basis', [any, ...basesByStrength.map((each) => [each, each] as const)]),
      ),
      field('chamber', 'Chamber', select('chamber', [any, ['enclosed', 'enclosed'], ['heated', 'heated']])),
      field('noise', 'Sound at most, dB(A)', input('noise')),
      ...(currencies.length === 1
        ? [field('price', `Machine at most, ${currencies[0]}`, input('price'))]
        : []),
    ]),
    element('p', { id: 'count', role: 'status' }),
    element('p', { class: 'ends' }, [
      element('button', { type: 'submit' }, ['Go to the list']),
      ' ',
      element('button', { type: 'reset' }, ['Ask nothing']),
    ]),
  ]);
}

type Option = readonly [value: string, shown: string];

function field(name: string, text: string, control: Markup): Markup {
  return element('div', {}, [label(name, text), control]);
}

function label(name: string, text: string): Markup {
  return element('label', { for: `ask-${name}` }, [text]);
}

function input(name: string, type: 'text' | 'search' = 'text'): Markup {
  const numeric = type === 'text' ? { inputmode: 'decimal', size: 6 } : {};
  return element('input', { id: `ask-${name}`, name, type, autocomplete: 'off', ...numeric });
}

function select(name: string, options: readonly Option[]): Markup {
  return element(
    'select',
    { id: `ask-${name}`, name },
    options.map(([value, shown]) => element('option', { value }, [shown])),
  );
}
