// NIST/ITL Statistical Reference Datasets, https://www.itl.nist.gov/div898/strd/: certified values from the files in
// strd/. The digits asked for are what double precision allows on each set, and are printed with `--reporter=verbose`.
import { expect, describe as group, test } from 'vitest';
import { describe } from '../../src/statistics/describe.ts';
import { leastSquares } from '../../src/statistics/least-squares.ts';
import { nonlinearLeastSquares } from '../../src/statistics/nonlinear-least-squares.ts';
import { certified, certifiedParameters, digits, strdRows } from './strd/strd-file.ts';

function report(name: string, agreement: Readonly<Record<string, number>>): void {
  const figures = Object.entries(agreement).map(([what, value]) => `${what} ${value.toFixed(1)}`);
  console.log(`${name}: digits of agreement ${figures.join(', ')}`);
}

group('univariate summary', () => {
  test.each([
    ['Michelso', 13, 12, 12],
    ['Lottery', 13, 13, 12],
    ['NumAcc3', 13, 9, 9],
  ])('%s', (name, mean, deviation, autocorrelation) => {
    const summary = describe(strdRows(name).map(([y = Number.NaN]) => y));
    const agreement = {
      mean: digits(summary.mean, certified(name, /^Sample Mean[^:]*(?:ybar)?:/)),
      deviation: digits(summary.standardDeviation, certified(name, /^Sample Standard Deviation.*s?:/)),
      autocorrelation: digits(summary.autocorrelation, certified(name, /^Sample Autocorrelation.*:/)),
    };
    report(name, agreement);
    expect(summary.count).toBe({ Michelso: 100, Lottery: 218, NumAcc3: 1001 }[name]);
    expect(agreement.mean).toBeGreaterThan(mean);
    expect(agreement.deviation).toBeGreaterThan(deviation);
    expect(agreement.autocorrelation).toBeGreaterThan(autocorrelation);
  });
});

group('linear least squares', () => {
  const designs: Record<string, (predictors: readonly number[]) => number[]> = {
    Norris: ([x = Number.NaN]) => [1, x],
    NoInt1: ([x = Number.NaN]) => [x],
    Longley: (predictors) => [1, ...predictors],
    Wampler1: ([x = Number.NaN]) => [1, x, x ** 2, x ** 3, x ** 4, x ** 5],
  };

  test.each([
    ['Norris', 12, 12, 12],
    ['NoInt1', 13, 13, 13],
    ['Longley', 9, 9, 11],
  ])('%s', (name, estimates, errors, spread) => {
    const rows = strdRows(name);
    const fit = leastSquares(
      rows.map(([, ...predictors]) => designs[name]!(predictors)),
      rows.map(([y = Number.NaN]) => y),
    );
    if (!fit.ok) throw new Error(fit.error.message);
    const parameters = certifiedParameters(name);
    const agreement = {
      estimates: Math.min(
        ...parameters.map(([value], index) => digits(fit.value.coefficients[index]!, value!)),
      ),
      errors: Math.min(
        ...parameters.map(([, error], index) => digits(fit.value.standardErrors[index]!, error!)),
      ),
      deviation: digits(
        fit.value.residualStandardDeviation,
        certified(name, /^\s+Standard Deviation(?=\s+\d)/),
      ),
      rSquared: digits(fit.value.rSquared, certified(name, /^\s+R-Squared/)),
    };
    report(name, agreement);
    expect(fit.value.degreesOfFreedom).toBe(certified(name, /^Residual(?=\s+\d)/));
    expect(agreement.estimates).toBeGreaterThan(estimates);
    expect(agreement.errors).toBeGreaterThan(errors);
    expect(agreement.deviation).toBeGreaterThan(spread);
    expect(agreement.rSquared).toBeGreaterThan(12);
  });

  test('Wampler1, an exact fit of degree 5', () => {
    const rows = strdRows('Wampler1');
    const fit = leastSquares(
      rows.map(([, ...predictors]) => designs.Wampler1!(predictors)),
      rows.map(([y = Number.NaN]) => y),
    );
    if (!fit.ok) throw new Error(fit.error.message);
    const estimates = Math.min(...fit.value.coefficients.map((coefficient) => digits(coefficient, 1)));
    report('Wampler1', { estimates, deviation: digits(fit.value.residualStandardDeviation, 0) });
    expect(estimates).toBeGreaterThan(9);
    expect(fit.value.residualStandardDeviation).toBeLessThan(1e-7);
  });
});

group('nonlinear least squares', () => {
  const models: Record<string, (x: number, b: readonly number[]) => number> = {
    Misra1a: (x, [b1 = 0, b2 = 0]) => b1 * (1 - Math.exp(-b2 * x)),
    Chwirut2: (x, [b1 = 0, b2 = 0, b3 = 0]) => Math.exp(-b1 * x) / (b2 + b3 * x),
    DanWood: (x, [b1 = 0, b2 = 0]) => b1 * x ** b2,
    Thurber: (x, [b1 = 0, b2 = 0, b3 = 0, b4 = 0, b5 = 0, b6 = 0, b7 = 0]) =>
      (b1 + b2 * x + b3 * x ** 2 + b4 * x ** 3) / (1 + b5 * x + b6 * x ** 2 + b7 * x ** 3),
    MGH17: (x, [b1 = 0, b2 = 0, b3 = 0, b4 = 0, b5 = 0]) =>
      b1 + b2 * Math.exp(-x * b4) + b3 * Math.exp(-x * b5),
  };
  const cases = Object.keys(models).flatMap((name) => [1, 2].map((start) => [name, start] as const));

  test.each(cases)('%s from start %i', (name, start) => {
    const rows = strdRows(name);
    const parameters = certifiedParameters(name);
    const fit = nonlinearLeastSquares({
      model: models[name]!,
      start: parameters.map((row) => row[start - 1]!),
      x: rows.map((row) => row[1]!),
      y: rows.map((row) => row[0]!),
    });
    if (!fit.ok) throw new Error(fit.error.message);
    const agreement = {
      estimates: Math.min(...parameters.map((row, index) => digits(fit.value.parameters[index]!, row[2]!))),
      errors: Math.min(...parameters.map((row, index) => digits(fit.value.standardErrors[index]!, row[3]!))),
      squares: digits(fit.value.residualSumOfSquares, certified(name, /^Residual Sum of Squares:/)),
    };
    report(`${name} from start ${start}`, agreement);
    expect(agreement.estimates).toBeGreaterThan(6);
    expect(agreement.errors).toBeGreaterThan(5);
    expect(agreement.squares).toBeGreaterThan(9);
  });
});
