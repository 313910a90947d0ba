import 'server-only'
import { readLink } from '@almanac/identity/one-time-link'
import { may } from '@almanac/identity/permissions'
import { type PublicPurpose, readPublicToken } from '@almanac/identity/public-token'
import { countRequest } from '@almanac/identity/request-limit'
import { readPerson, readWho, type Who } from '@almanac/identity/who'
import type { LinkPurpose } from '@almanac/records/one-time-link'
import type { Permission } from '@almanac/records/permission'
import { AppError } from '@almanac/runtime/errors'
import type { LinkContext, OneTimeContext, RequestContext, SignedContext } from './context.ts'
import { checkPage } from './page-company.ts'
import { toWireError } from './wire-error.ts'

/** What a person needs: a permission, or only to be a member of some company; then a page of another company may ask too (it changes the company back). */
export type MemberDoor = { permission: Permission | 'any-member' }
/** What whoever holds a link needs: a token made for this purpose. */
export type LinkDoor = { link: PublicPurpose; token: string }
/** What whoever holds a link that works once needs: its token. */
export type OneTimeDoor = { once: LinkPurpose; token: string }
/** What a stranger may ask for without any link: a mail. */
export type StrangerDoor = { stranger: 'mail' }
export type Door = MemberDoor | LinkDoor | OneTimeDoor | StrangerDoor

type Admitted<D extends Door> = D extends StrangerDoor
  ? RequestContext
  : D extends OneTimeDoor
    ? OneTimeContext
    : D extends LinkDoor
      ? LinkContext
      : SignedContext

export const noSuchLink = () =>
  new AppError('not-found', 'This link no longer works. Nothing was changed; ask the company that sent it for a new one.')

/**
 * Who asks: session and membership read afresh, and counted, the person's requests by person, those without a session by address. Reads no body, so that
 * nobody's is read before it is known who sends it.
 */
export async function identify(context: RequestContext): Promise<Who> {
  if (context.who) return context.who
  try {
    context.who = await readWho(context.headers)
  } catch (error) {
    if (error instanceof AppError && (error.code === 'unauthenticated' || error.code === 'forbidden'))
      await countRequest(`address ${context.address}`)
    throw error
  }
  await countRequest(context.who.person.id)
  return context.who
}

async function passMember(context: RequestContext, { permission }: MemberDoor): Promise<SignedContext> {
  const who = await identify(context)
  if (permission !== 'any-member') {
    checkPage(context.headers, who)
    if (!may(who.role, permission))
      throw new AppError(
        'forbidden',
        `Your role (${who.role}) can’t do this. Nothing was changed; ask the owner of your company if you should.`,
      )
  }
  return { ...context, who, scope: { companyId: who.company.id, personId: who.person.id } }
}

async function passLink(context: RequestContext, { link, token }: LinkDoor): Promise<LinkContext> {
  const record = readPublicToken(link, token)
  await countRequest(record ? `link ${record.id}` : `address ${context.address}`)
  if (!record) throw noSuchLink()
  return { ...context, record }
}

/** A link that works once: counted by address, tokens that are none more strictly (`readLink`). Whoever holds it may be signed in besides. */
async function passOnce(context: RequestContext, { once, token }: OneTimeDoor): Promise<OneTimeContext> {
  await countRequest(`address ${context.address}`)
  const link = await readLink(once, token, context.address)
  return { ...context, link, person: await readPerson(context.headers) }
}

/** Somebody whom nobody knows: counted by address. */
async function passStranger(context: RequestContext): Promise<RequestContext> {
  await countRequest(`address ${context.address}`)
  return context
}

/** Whoever comes to a door, as what stands behind it sees them. */
function pass(context: RequestContext, door: Door) {
  if ('stranger' in door) return passStranger(context)
  if ('once' in door) return passOnce(context, door)
  return 'link' in door ? passLink(context, door) : passMember(context, door)
}

/**
 * The one door of procedures, file routes, the live stream and public links: session or link, membership read afresh, request limit, company of the page,
 * permission; then the work, and one line in the log. `name` says what is asked for and holds no token. Throws what goes over the wire.
 */
export async function admit<D extends Door, T>(
  context: RequestContext,
  door: D,
  name: Record<string, string>,
  work: (admitted: Admitted<D>) => Promise<T>,
): Promise<T> {
  const begun = performance.now()
  const done = (outcome: string) =>
    context.log.info({ requestId: context.requestId, ...name, outcome, ms: Math.round(performance.now() - begun) }, 'request')
  try {
    const admitted = await pass(context, door)
    const result = await work(admitted as Admitted<D>)
    done('ok')
    return result
  } catch (error) {
    const wire = toWireError(error, context)
    done(wire.data.code)
    throw wire
  }
}
