/** What Stryker's instrumented code reads and writes under this name. */
interface Namespace {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
  mutantCoverage?: unknown;
}

interface MutantRun {
  readonly testFilter?: readonly string[];
  readonly hitLimit?: number;
  readonly activeMutant: { readonly id: string };
  readonly mutantActivation: 'runtime' | 'static';
}

const namespace: Namespace = {};
Object.assign(globalThis, { __stryker__: namespace });

/** Stryker lets a mutant be reached a hundred times as often as all tests do without it; in an inner loop that takes minutes. */
const ofHitLimit = 0.05;

/** Stryker goes into its copy of the project only after it has loaded this file. */
const loading = () => import('./run-tests.ts');

/**
 * Runs tests in one process that goes on: the program is loaded once, and only the files of tests anew for each mutant, so
 * that nothing they keep outlives it. A vitest worker would load the whole program for each, which takes ten times as long.
 */
class ResidentRunner {
  #runs = 0;
  #isSpoilt = false;

  capabilities() {
    return { reloadEnvironment: false };
  }

  async dryRun() {
    const { runTests } = await loading();
    namespace.activeMutant = undefined;
    const outcomes = await runTests({
      isFirstFailureEnough: false,
      onLoaded: () => {},
      onTest: (id) => {
        namespace.currentTestId = id;
      },
    });
    namespace.currentTestId = undefined;
    const tests = outcomes.map(({ id, name, file, milliseconds, failure }) => ({
      ...{ id, name, fileName: file, timeSpentMs: milliseconds },
      ...(failure === null ? { status: 0 } : { status: 1, failureMessage: failure }),
    }));
    return { status: 'complete', tests, mutantCoverage: namespace.mutantCoverage };
  }

  async mutantRun(run: MutantRun) {
    // Stryker answers a failed run with a fresh process and the same mutant.
    if (this.#isSpoilt) throw new Error('A mutant has changed what the program keeps; starting anew');
    const isFresh = this.#runs === 0;
    this.#runs += 1;
    const outcomes = await this.#outcomesWith(run, run.testFilter);
    const { hitCount = 0, hitLimit = Number.POSITIVE_INFINITY } = namespace;
    const nrOfTests = outcomes.length;
    const failed = outcomes.find(({ failure }) => failure !== null);
    if (failed === undefined) return { status: 'survived', nrOfTests };
    if (hitCount > hitLimit) return { status: 'timeout', reason: 'It went round without an end' };
    if (run.mutantActivation === 'runtime') await this.#checkWithoutMutant(failed.id, isFresh);
    return { status: 'killed', killedBy: [failed.id], failureMessage: failed.failure, nrOfTests };
  }

  async #outcomesWith(
    { hitLimit, activeMutant, mutantActivation }: Omit<MutantRun, 'testFilter'>,
    ids: readonly string[] | undefined,
  ) {
    const limit = hitLimit === undefined ? undefined : hitLimit * ofHitLimit;
    const activate = () => {
      Object.assign(namespace, { hitCount: 0, hitLimit: limit, activeMutant: activeMutant.id });
    };
    namespace.activeMutant = undefined;
    if (mutantActivation === 'static') activate();
    const { runTests } = await loading();
    return runTests({
      ...(ids !== undefined && { ids }),
      isFirstFailureEnough: true,
      onLoaded: activate,
      onTest: () => {},
    });
  }

  /** A test that also fails without the mutant tells nothing of it, unless the mutant is the first of this process. */
  async #checkWithoutMutant(id: string, isFresh: boolean): Promise<void> {
    const outcomes = await this.#outcomesWith({ activeMutant: { id: 'none' }, mutantActivation: 'runtime' }, [
      id,
    ]);
    this.#isSpoilt = outcomes.some(({ failure }) => failure !== null);
    if (this.#isSpoilt && !isFresh)
      throw new Error('An earlier mutant may have changed what the program keeps');
  }
}

export const strykerPlugins = [{ kind: 'TestRunner', name: 'resident', factory: () => new ResidentRunner() }];
