import { AppError } from '@almanac/runtime/errors'

/** Constraints that a person can run into, with the sentence they read. */
const SENTENCES: Record<string, string> = {
  assignment_one_place: 'One of these people is already on another visit at that time. Nothing was booked; choose another time or crew.',
  vehicle_use_one_place: 'The vehicle is already out on another visit at that time. Nothing was booked; choose another time or vehicle.',
  import_batch_one_reading: 'Your company’s last file is still being read. Nothing was imported. Try again in a minute.',
  visit_one_open: 'This job already has a visit that is still to come. Nothing was booked; look at the job again.',
  membership_keeps_an_owner: 'A company needs an owner, and this is its last one. Nothing was changed; make someone else an owner first.',
  bed_one_open: 'This tank already has a bed in service. Nothing was changed; open the tank to see it.',
  tenure_one_open: 'This site already has a customer who holds it. Nothing was changed; end that first.',
  job_one_open_rebed: 'A rebed for this bed is already open. Nothing was added; open the bed to see the job.',
  colleague_company_id_person_id_key:
    'Someone else on the day sheets signs in as this person already. Nothing was saved; change that one first, or choose another.',
  stock_item_company_id_name_key:
    'The stores already have an item of that name. Nothing was saved; change that one, or choose another name.',
  supply_period_one_start: 'This supply already has an entry that starts on that day. Nothing was added; change that one instead.',
}

/** Prisma's codes for a database that cannot be reached, closed the connection or has none to spare. */
const AWAY_CODES = ['P1001', 'P1002', 'P1008', 'P1017', 'P2024', 'P2037']
/** PostgreSQL's classes 08 (connection), 53 but for a full disk (too few resources) and 57P (server stopped, starting or crashed), wherever Prisma put them. */
const AWAY_STATES = /(?:[cC]ode"?:"|[Cc]ode: `)(08\w{3}|53[023]00|57P0[1-5])\b/
/** What Prisma's driver (its kinds, where it hands them out bare), the driver beneath and the network say of a lost connection. */
const AWAY_WORDS =
  /ConnectionClosed|DatabaseNotReachable|SocketTimeout|TooManyConnections|Connection terminated|connection is closed|timeout exceeded when trying to connect|ECONNREFUSED|ECONNRESET|EPIPE|ETIMEDOUT|EAI_AGAIN|ENOTFOUND|EHOSTUNREACH|ENETUNREACH|closed the connection|reach database server|not queryable|terminating connection/
const DISK_FULL = /(?:[cC]ode"?:"|[Cc]ode: `)53100\b|No space left on device/
const DEEPEST = 8

type Raw = {
  code?: string
  message?: string
  meta?: unknown
  originalCode?: string
  originalMessage?: string
  kind?: string
  cause?: unknown
}

/** An error and what lies behind it: a library between us and the database may say no more than that something failed. */
function withCauses(error: Error): Raw[] {
  const chain: Raw[] = []
  for (let one: unknown = error; typeof one === 'object' && one !== null && chain.length < DEEPEST; one = (one as Raw).cause)
    chain.push(one as Raw)
  return chain
}

/** Maps what the database refuses to an error a person can act on; passes others on as they are. */
export function asAppError(error: unknown): unknown {
  if (!(error instanceof Error)) return error
  const chain = withCauses(error)
  const ours = chain.find((one) => one instanceof AppError)
  if (ours) return ours
  const text = chain
    .map(
      ({ message, code, meta, originalCode, originalMessage, kind }) =>
        `${message} ${JSON.stringify({ code, meta, originalCode, originalMessage, kind })}`,
    )
    .join(' ')
  const has = (...codes: string[]) => chain.some(({ code = '' }) => codes.includes(code))
  const state = /\b(23P01|23505|23503|23514|42501|40001|40P01|55P03|57014)\b/.exec(text)?.[1] ?? ''
  const constraint = Object.keys(SENTENCES).find((name) => text.includes(name))
  if (constraint) return new AppError('conflict', SENTENCES[constraint] ?? '', { constraint }, error)
  if (state === '23505' || has('P2002'))
    return new AppError('conflict', 'Such an entry exists already. Nothing was added; change that one instead.', {}, error)
  if (state === '23503' || has('P2003'))
    return new AppError(
      'not-found',
      'A record this refers to does not exist in this company. Nothing was changed; load the page again.',
      {},
      error,
    )
  if (state === '40001' || state === '40P01' || state === '55P03' || has('P2034'))
    return new AppError(
      'conflict',
      'Someone else changed the same thing at that moment. Nothing was saved; look again and retry.',
      { busy: true },
      error,
    )
  if (DISK_FULL.test(text))
    return new AppError('unavailable', 'The disk of the server is full, so nothing was saved. Try again once there is space.', {}, error)
  // A connection that was lost may have taken the answer of a commit with it: whether it was saved is then not known.
  if (has(...AWAY_CODES) || AWAY_STATES.test(text) || AWAY_WORDS.test(text))
    return new AppError(
      'unavailable',
      'The database can’t be reached right now, so we can’t tell whether this was saved. Try again in a moment; nothing is saved twice.',
      {},
      error,
    )
  if (has('P2028'))
    return new AppError('unavailable', 'The database did not answer in time. Nothing was saved; try again in a moment.', {}, error)
  return error
}
