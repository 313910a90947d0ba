import 'server-only'
import { lookUp } from '@almanac/operations/search/look-up'
import { can } from '../procedure.ts'

export const find = {
  look: can('read:site').find.look.handler(({ context, input }) => lookUp(context.scope, input.q)),
}
