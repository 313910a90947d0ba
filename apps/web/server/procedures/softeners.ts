import 'server-only'
import { readSoftenerSettings } from '@almanac/database/read/softener-settings'
import { can } from '../procedure.ts'

export const softeners = {
  settings: can('read:site').softeners.settings.handler(({ context, input }) => readSoftenerSettings(context.scope, input.softenerId)),
}
