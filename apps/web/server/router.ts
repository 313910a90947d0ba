import 'server-only'
import { daySheets } from './procedures/day-sheets.ts'
import { due } from './procedures/due.ts'
import { jobs } from './procedures/jobs.ts'
import { session } from './procedures/session.ts'
import { visits } from './procedures/visits.ts'
import { water } from './procedures/water.ts'

/** Every procedure, by domain, in the shape of the contract. */
export const router = {
  daySheets,
  due,
  jobs,
  session,
  visits,
  water,
}
