import { Option } from 'commander';

/** `--decimal comma`: which sign stands before the decimals, where the numbers of a sheet leave that open. */
export function decimalOption(): Option {
  return new Option('--decimal <sign>', 'decimal sign of a sheet whose numbers leave it open').choices([
    'point',
    'comma',
  ]);
}

/** `--sheet NAME`: which sheet of a workbook is meant. */
export function workbookSheetOption(): Option {
  return new Option('--sheet <name>', 'sheet of a workbook (.xlsx), such as Tuesday, where it has several');
}
