import 'server-only'
import { contract } from '@almanac/contract/contract'
import { may, type Permission } from '@almanac/identity/permissions'
import { countRequest } from '@almanac/identity/request-limit'
import { readWho } from '@almanac/identity/who'
import { AppError } from '@almanac/runtime/errors'
import { implement } from '@orpc/server'
import type { RequestContext } from './context.ts'
import { checkPageCompany } from './page-company.ts'
import { toWireError } from './wire-error.ts'

const base = implement(contract).$context<RequestContext>()

/** The one wrapper: log, error mapping, session, membership read afresh, permission, rate limit. zod runs inside it, from the contract. */
function wrapped(permission: Permission | null) {
  return base.use(async ({ context, next, path }) => {
    const begun = performance.now()
    const done = (outcome: string) =>
      context.log.info(
        { requestId: context.requestId, procedure: path.join('.'), outcome, ms: Math.round(performance.now() - begun) },
        'request',
      )
    try {
      const who = await readWho(context.headers)
      if (permission) checkPageCompany(context.headers, who)
      if (permission && !may(who.role, permission))
        throw new AppError(
          'forbidden',
          `Your role (${who.role}) may not do this. Nothing was changed; ask the owner of your firm if you should.`,
        )
      await countRequest(who.person.id)
      const result = await next({ context: { who, scope: { companyId: who.company.id, personId: who.person.id } } })
      done('ok')
      return result
    } catch (error) {
      const wire = toWireError(error, context)
      done(wire.data.code)
      throw wire
    }
  })
}

/** Implements a procedure that demands a permission: `can('read:site').sites.list.handler(…)`. */
export const can = (permission: Permission) => wrapped(permission)

/** Implements a procedure open to every signed-in member of a company, whatever the role. */
export const anyMember = () => wrapped(null)
