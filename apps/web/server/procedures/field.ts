import 'server-only'
import { readSetAside } from '@almanac/database/read/set-aside-list'
import { settleSetAside } from '@almanac/operations/jobs/settle-set-aside'
import { takeFieldCommand } from '@almanac/operations/jobs/take-field-command'
import { can } from '../procedure.ts'
import { saidByTablet } from '../said-by-tablet.ts'

export const field = {
  send: can('close:visit').field.send.handler(({ context, input }) => takeFieldCommand(context.scope, input)),
  setAside: can('book:visit').field.setAside.handler(async ({ context, input }) => {
    const { rows, nextCursor } = await readSetAside(context.scope, input)
    return { rows: rows.map(({ content, ...row }) => ({ ...row, lines: saidByTablet(content, context.who.company) })), nextCursor }
  }),
  settle: can('book:visit').field.settle.handler(({ context, input }) => settleSetAside(context.scope, input)),
}
