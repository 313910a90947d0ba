import 'server-only'
import { readMaterials } from '@almanac/database/read/materials'
import { handOver, takeBack } from '@almanac/operations/jobs/hand-over'
import { setMaterial } from '@almanac/operations/jobs/set-material'
import { can } from '../procedure.ts'

const change = can('book:visit').materials

export const materials = {
  ofJob: can('read:job').materials.ofJob.handler(({ context, input }) => readMaterials(context.scope, input.jobId)),
  set: change.set.handler(({ context, input }) => setMaterial(context.scope, input)),
  handOver: change.handOver.handler(({ context, input }) => handOver(context.scope, input)),
  takeBack: change.takeBack.handler(({ context, input }) => takeBack(context.scope, input)),
}
