/** What the report of a run holds of each mutant (the schema of mutation testing elements). */
interface Mutant {
  readonly status: string;
  readonly mutatorName: string;
  readonly replacement?: string;
  readonly location: { readonly start: { readonly line: number } };
}

interface Report {
  readonly files: Readonly<Record<string, { readonly mutants: readonly Mutant[] }>>;
}

/** A table of files with the mutants that died and lived, and below it those that lived, each with its place. */
export function mutationTable(report: string): string {
  const files = Object.entries((JSON.parse(report) as Report).files).toSorted(([one], [other]) =>
    one < other ? -1 : 1,
  );
  const rows = files.map(([path, { mutants }]) => rowOf(path, mutants));
  const all = files.flatMap(([, { mutants }]) => mutants);
  const lived = files.flatMap(([path, { mutants }]) =>
    mutants
      .filter(({ status }) => isAlive(status))
      .map(
        (mutant) =>
          `${path}:${mutant.location.start.line} ${mutant.mutatorName}: ${mutant.replacement ?? ''}`,
      ),
  );
  return [
    '| file | mutants | died | lived | score |',
    '| --- | ---: | ---: | ---: | ---: |',
    ...rows,
    rowOf('all', all),
    '',
    ...lived,
  ].join('\n');
}

/** A mutant that runs without an end has been noticed; what no test reaches has not. */
function isAlive(status: string): boolean {
  return status === 'Survived' || status === 'NoCoverage';
}

function rowOf(name: string, mutants: readonly Mutant[]): string {
  const died = mutants.filter(({ status }) => status === 'Killed' || status === 'Timeout').length;
  const lived = mutants.filter(({ status }) => isAlive(status)).length;
  const score = died + lived === 0 ? '' : `${((100 * died) / (died + lived)).toFixed(0)} %`;
  return `| ${name} | ${died + lived} | ${died} | ${lived} | ${score} |`;
}
