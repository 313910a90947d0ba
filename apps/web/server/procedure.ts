import 'server-only'
import { contract } from '@almanac/contract/contract'
import { unstorableText } from '@almanac/contract/storable-text'
import type { Permission } from '@almanac/records/permission'
import { AppError } from '@almanac/runtime/errors'
import { implement } from '@orpc/server'
import { admit } from './admit.ts'
import type { RequestContext } from './context.ts'

const base = implement(contract).$context<RequestContext>()

/** Every procedure's wrapper: the one door. zod runs inside it, from the contract. */
const behind = (permission: Permission | 'any-member') =>
  base.use(({ context, next, path }, input) =>
    admit(context, { permission }, { procedure: path.join('.') }, async ({ who, scope }) => {
      const field = unstorableText(input)
      if (field !== null) throw new AppError('invalid', `${field}: one character can’t be stored. Nothing was saved; type the text again.`)
      return next({ context: { who, scope } })
    }),
  )

/** Implements a procedure that demands a permission: `can('read:site').sites.list.handler(…)`. */
export const can = (permission: Permission) => behind(permission)

/** Implements a procedure open to every signed-in member of a company, whatever the role. */
export const anyMember = () => behind('any-member')
