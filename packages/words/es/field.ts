import type { FieldCatalogue } from '../catalogue.ts'
import { account } from './account.ts'
import { asks } from './asks.ts'
import { beadCondition } from './bead-condition.ts'
import { cautions } from './cautions.ts'
import { jobKind } from './job-kind.ts'
import { steps } from './steps.ts'

export const field: FieldCatalogue = { account, asks, beadCondition, cautions, jobKind, steps }
