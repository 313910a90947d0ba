import { BaseSequencer, type TestSpecification } from 'vitest/node'

/**
 * Files with seconds of arithmetic or many refits in them, the longest first. Left to itself a first run goes by project and by size of file: the longest is a short
 * file of the last project, and at the end one core works on it while the others have nothing left.
 */
const LONG = [
  'tests/reference/forecast-coverage.test.ts',
  'prisma/demo/load-demo.test.ts',
  'tests/isolation/procedures.test.ts',
  'packages/documents/rebed-plan/rebed-plan.test.ts',
  'packages/operations/imports/apply-import.test.ts',
  'packages/operations/forecasts/pool.test.ts',
  'packages/operations/forecasts/new-samples.test.ts',
  'packages/operations/forecasts/refit-company.test.ts',
  'tests/tooling/backup.test.ts',
  'tests/faults/refit.test.ts',
  'packages/forecast/backtest/backtest-firm.test.ts',
  'packages/forecast/fleet/level-rebeds.test.ts',
  'tests/tooling/migrate.test.ts',
]

const place = ({ moduleId }: TestSpecification) => {
  const index = LONG.findIndex((file) => moduleId.endsWith(file))
  return index < 0 ? LONG.length : index
}

/** Starts what takes longest first, whichever project it belongs to; the rest as vitest has it. */
export default class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    return (await super.sort(files)).sort((a, b) => place(a) - place(b))
  }
}
