import { contract } from '@almanac/contract/contract'
import { Join, SetPassword } from '@almanac/contract/people'
import { AskMail, SetUp } from '@almanac/contract/set-up'
import { guideMeasures } from '@almanac/records/guide-measure'
import * as z from 'zod'
import { type Body, hostileBody, hostileFile } from './hostile-bodies.ts'
import type { Chance } from './random.ts'
import { oddValue, valueFor } from './values.ts'

/** One request of a fuzzer. `as` names the session it carries; `what` groups it in a report. */
export type FuzzRequest = {
  what: string
  method: 'GET' | 'PATCH' | 'POST'
  path: string
  as: 'owner' | 'technician' | 'nobody'
  headers: Record<string, string>
  body?: Body
}

/** What the requests are made of: ids of records that exist, and tokens of links that work. */
export type Known = {
  ids: readonly string[]
  arrivalTokens: readonly string[]
  reminderTokens: readonly string[]
  calendarTokens: readonly string[]
  measureTokens: readonly string[]
  bedId: string
  batchId: string
  mostBytes: number
  mostFileBytes: number
}

type Procedure = { name: string; input: z.core.$ZodType | undefined }

const procedures: Procedure[] = Object.entries(contract).flatMap(([domain, verbs]) =>
  Object.entries(verbs as Record<string, { '~orpc': { inputSchema?: unknown } }>).map(([verb, one]) => ({
    name: `${domain}/${verb}`,
    input: one['~orpc'].inputSchema as z.core.$ZodType | undefined,
  })),
)

const PAGES = [
  '',
  'sites',
  'sites/new',
  'water',
  'jobs',
  'jobs/new',
  'day-sheets',
  'day-sheets/plan',
  'crews',
  'stores',
  'imports',
  'firm',
  'today',
  'sign-in',
  'policy',
]
const PAGES_OF = [
  'sites/$',
  'beds/$',
  'beds/$/choice',
  'jobs/$',
  'jobs/$/packing-list',
  'visits/$',
  'water/$',
  'imports/$',
  'softeners/$/settings',
  'arrival/$',
  'reminder/$',
  'measure/$',
]
const BAD_PIECES = [
  '%ff',
  '%E0%A4%A',
  '%00',
  '..%2f..',
  '%5c',
  'x'.repeat(3000),
  "'",
  '%25',
  ';',
  '__proto__',
  '%F0%9F%92%A9',
  '-1',
  'null',
]
const AUTH = [
  'sign-in/email',
  'sign-out',
  'change-password',
  'update-user',
  'get-session',
  'sign-up/email',
  'forget-password',
  'ok',
  'error',
  '../x',
  '%ff',
]

/** Doors that open once, with what they take: nobody has a key to them here, whose making is in the tests of each. */
const ONCE = { join: Join, 'new-password': SetPassword, 'new-email': z.object({}), 'set-up': SetUp, 'mail-link': AskMail }

const plain = (text: string): Body => ({ head: text, repeat: '', times: 0, tail: '' })
const JSON_TYPE = { 'content-type': 'application/json' }

/** The next request: mostly a procedure with an input of its schema's shape; also pages, files, links, sign-in, and bodies that no handler may read whole. */
export function nextRequest(chance: Chance, known: Known): FuzzRequest {
  const as = chance.happens(0.75) ? 'owner' : chance.one(['technician', 'nobody'] as const)
  const piece = () => (chance.happens(0.5) ? chance.one(known.ids) : chance.one(BAD_PIECES))
  const kind = chance.next()
  if (kind < 0.72) return procedureCall(chance, known, as)
  if (kind < 0.8) {
    const page = chance.happens(0.4) ? chance.one(PAGES) : chance.one(PAGES_OF).replace('$', piece())
    const query = chance.happens(0.3) ? `?${chance.one(['q', 'day', 'month', 'sort', 'answer'])}=${chance.one(BAD_PIECES)}` : ''
    return { what: 'page', method: chance.happens(0.93) ? 'GET' : 'POST', path: `/${page}${query}`, as, headers: {} }
  }
  if (kind < 0.84) {
    const path = chance
      .one([
        '/api/beds/$/plan',
        '/api/imports/$/problems',
        '/api/exports/$',
        '/api/pictures/$',
        '/api/visits/$/report',
        '/api/messages/$/report',
        '/api/logo',
        '/api/nothing/$',
        '/api/rpc/$/x',
      ])
      .replace('$', piece())
    return { what: 'route', method: 'GET', path, as, headers: { 'sec-fetch-site': 'same-origin' } }
  }
  if (kind < 0.88) {
    if (chance.happens(0.25)) return onceCall(chance, known, piece())
    if (chance.happens(0.25)) return reminderCall(chance, known, piece())
    if (chance.happens(0.15)) return measureCall(chance, known, piece())
    const arrival = chance.happens(0.6)
    const token = chance.happens(0.5)
      ? chance.one(arrival ? known.arrivalTokens : known.calendarTokens)
      : chance.one([...BAD_PIECES, ...known.arrivalTokens])
    if (!arrival) return { what: 'link', method: 'GET', path: `/api/calendar/${token}`, as: 'nobody', headers: {} }
    if (chance.happens(0.3)) return { what: 'link', method: 'GET', path: `/api/arrival/${token}/calendar`, as: 'nobody', headers: {} }
    const body = chance.happens(0.5) ? plain(`window=${piece()}`) : hostileBody(chance, known.mostBytes)
    const type = chance.one(['application/x-www-form-urlencoded', 'multipart/form-data', 'text/plain', 'application/json'])
    return { what: 'link', method: 'POST', path: `/api/arrival/${token}`, as: 'nobody', headers: { 'content-type': type }, body }
  }
  if (kind < 0.93) {
    const credentials = {
      email: chance.one(['owner@firm.example', 'x', '\u0000@x.example', 7, null]),
      password: chance.one(['x', 'y'.repeat(200), null]),
      name: oddValue(chance),
    }
    const body = chance.happens(0.8) ? plain(JSON.stringify(credentials)) : hostileBody(chance, known.mostBytes)
    return {
      what: 'sign-in',
      method: chance.happens(0.9) ? 'POST' : 'GET',
      path: `/api/auth/${chance.one(AUTH)}`,
      as: chance.one(['nobody', 'technician']),
      headers: JSON_TYPE,
      body,
    }
  }
  if (kind < 0.96) {
    const file = hostileFile(chance, known.mostFileBytes)
    if (chance.happens(0.3)) return pieceOfPicture(chance, piece(), as, file)
    const name = encodeURIComponent(chance.one(['list.csv', 'list.xlsx', '../x', 'a\u0000b', '']))
    return { what: 'file', method: 'POST', path: `/api/imports?name=${name}`, as, headers: { 'sec-fetch-site': 'same-origin' }, body: file }
  }
  const call = procedureCall(chance, known, as)
  const type = chance.one(['application/json', 'text/plain', 'multipart/form-data; boundary=x', 'application/octet-stream', ''])
  return { ...call, what: 'large body', headers: { ...call.headers, 'content-type': type }, body: hostileBody(chance, known.mostBytes) }
}

/** Bytes of a picture, from where it may or may not be. */
function pieceOfPicture(chance: Chance, picture: string, as: FuzzRequest['as'], body: Body): FuzzRequest {
  const headers = {
    'sec-fetch-site': 'same-origin',
    'upload-offset': chance.one(['0', '0', '4', '-1', '1e3', '999999999', 'x', '']),
    'content-type': chance.one(['application/offset+octet-stream', 'application/offset+octet-stream', 'text/plain']),
  }
  return { what: 'picture', method: 'PATCH', path: `/api/pictures/${picture}/upload`, as, headers, body }
}

function onceCall(chance: Chance, known: Known, token: string): FuzzRequest {
  const [door, schema] = chance.one(Object.entries(ONCE))
  const value = chance.happens(0.3) ? oddValue(chance) : valueFor(schema, chance, { ids: known.ids, fair: chance.happens(0.5) })
  const body = chance.happens(0.7) ? plain(JSON.stringify(value) ?? '') : hostileBody(chance, known.mostBytes)
  const headers = { 'content-type': chance.one(['application/json', 'text/plain', '']), 'sec-fetch-site': 'same-origin' }
  // A mail is asked for at an address of its own.
  const path = door === 'mail-link' ? '/api/mail-link' : `/api/${door}/${token}`
  return { what: 'link', method: 'POST', path, as: chance.one(['nobody', 'technician']), headers, body }
}

/** Half of the inputs are what the schema takes: the rest mostly ends before the handler. */
function procedureCall(
  chance: Chance,
  known: Known,
  as: FuzzRequest['as'],
  procedure = chance.one(procedures),
  fair = chance.happens(0.5),
): FuzzRequest {
  const { name, input } = procedure
  const odd = !fair && chance.happens(0.03)
  const sent = odd ? oddValue(chance) : valueFor(input, chance, { ids: known.ids, fair })
  const headers: Record<string, string> = fair || chance.happens(0.97) ? { ...JSON_TYPE, 'x-csrf-token': 'orpc' } : JSON_TYPE
  const body = plain(JSON.stringify({ json: sent, ...(!fair && chance.happens(0.03) ? { meta: oddValue(chance) } : {}) }))
  return { what: `procedure ${name}`, method: 'POST', path: `/api/rpc/${name}`, as, headers, body }
}

/** A customer's answer, with or without a link that is there. */
function reminderCall(chance: Chance, known: Known, piece: string): FuzzRequest {
  const token = chance.happens(0.5) ? chance.one(known.reminderTokens) : piece
  const stop = chance.happens(0.2)
  const form = plain(`answer=${chance.one(['days', 'not-now', 'done', 'moved', piece])}&days=${piece}&months=3&day=${piece}&by=self`)
  const body = chance.happens(0.7) ? form : hostileBody(chance, known.mostBytes)
  const headers = { 'content-type': 'application/x-www-form-urlencoded' }
  return { what: 'link', method: 'POST', path: `/api/reminder/${token}${stop ? '/stop' : ''}`, as: 'nobody', headers, body }
}

/** A length of somebody's tank, by a link that is there or not. */
function measureCall(chance: Chance, known: Known, piece: string): FuzzRequest {
  const token = chance.happens(0.5) ? chance.one(known.measureTokens) : piece
  const form = plain(
    `measure=${chance.one([...guideMeasures, piece])}&value=${oddValue(chance)}&unit=${chance.one(['in', 'cm', piece])}&l=es`,
  )
  const body = chance.happens(0.7) ? form : hostileBody(chance, known.mostBytes)
  const headers = { 'content-type': 'application/x-www-form-urlencoded' }
  const of = chance.one(['', '', '/act', '/photograph'])
  const step = chance.one(['stop-and-refer', 'cap-out', piece])
  const act = plain(`do=${chance.one(['next', 'visit', 'ended', piece])}&step=${step}&end=${chance.one(['soft', 'beads', piece])}`)
  if (of === '/photograph') {
    const type = { 'content-type': 'multipart/form-data; boundary=x' }
    const parts = `--x\r\ncontent-disposition: form-data; name="kind"\r\n\r\ncap\r\n--x\r\ncontent-disposition: form-data; name="picture"; filename="a"\r\n\r\n${piece}\r\n--x--\r\n`
    return { what: 'link', method: 'POST', path: `/api/measure/${token}${of}`, as: 'nobody', headers: type, body: plain(parts) }
  }
  return { what: 'link', method: 'POST', path: `/api/measure/${token}${of}`, as: 'nobody', headers, body: of === '/act' ? act : body }
}

/** Each route once, with a record or a link that is there. The live stream has no end, so a test of its own asks it. */
export function eachRoute({
  bedId,
  batchId,
  exportId,
  arrivalTokens,
  reminderTokens,
  calendarTokens,
  measureTokens,
}: Known & { exportId: string }): FuzzRequest[] {
  const get = (path: string): FuzzRequest => ({ what: 'route', method: 'GET', path, as: 'owner', headers: {} })
  const post = (path: string, head: string, type: string): FuzzRequest => ({
    ...{ what: 'route', method: 'POST', path, as: 'owner', body: plain(head) },
    headers: { 'content-type': type, 'sec-fetch-site': 'same-origin', 'x-csrf-token': 'orpc' },
  })
  return [
    ...['/healthz', '/readyz', `/api/beds/${bedId}/plan`, `/api/imports/${batchId}/problems`, '/api/auth/get-session'].map(get),
    get(`/api/exports/${exportId}`),
    get('/api/letters'),
    get(`/api/calendar/${calendarTokens[0]}`),
    post(`/api/arrival/${arrivalTokens[0]}`, 'window=', 'application/x-www-form-urlencoded'),
    post(`/api/reminder/${reminderTokens[0]}`, 'answer=', 'application/x-www-form-urlencoded'),
    get(`/api/reminder/${reminderTokens[0]}/stop`),
    post(`/api/measure/${measureTokens[0]}`, 'measure=around&value=31', 'application/x-www-form-urlencoded'),
    post(`/api/measure/${measureTokens[0]}/act`, 'do=visit', 'application/x-www-form-urlencoded'),
    post(`/api/measure/${measureTokens[0]}/photograph`, 'picture=', 'multipart/form-data; boundary=x'),
    post('/api/imports?name=list.csv', 'Name,Street,Tank\nHanna Vale,Weir Road 8,10x54\n', 'text/csv'),
    post('/api/rpc/session/list', '{}', 'application/json'),
  ]
}

/** The owner asks each procedure once, with an input that its schema takes: whichever handler fails is met. */
export function eachProcedure(chance: Chance, known: Known): FuzzRequest[] {
  return procedures.map((one) => procedureCall(chance, known, 'owner', one, true))
}
