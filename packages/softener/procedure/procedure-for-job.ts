import type { JobKind } from '@almanac/records/job-kind'
import type { Procedure, ProcedureContext } from './procedure-types.ts'
import type { ProcedureWords } from './procedure-words.ts'
import { rebedProcedure } from './rebed-procedure.ts'
import { visitProcedure } from './visit-procedure.ts'

/** The steps of a visit by the kind of its job. A warranty visit finds and fixes a fault, as a repair does. Never refuses. */
export function procedureForJob(kind: JobKind, context: ProcedureContext, words: ProcedureWords): Procedure {
  if (kind === 'rebed') return rebedProcedure(context, words)
  return visitProcedure(kind === 'warranty-return' ? 'repair' : kind, context, words)
}
