import type { RecordCall } from '@almanac/contract/calls'
import type { Tx } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { lastRebedAt } from '@almanac/database/read/last-rebed'
import { runCommand } from '@almanac/database/run-command'
import type { CalledForVisit } from '@almanac/records/call'
import type { JobKind } from '@almanac/records/job-kind'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { formatDay } from '@almanac/units/format-day'
import { oweCall } from '../shared/call-backs.ts'
import { type CompanyFacts, companyFacts } from '../shared/company-facts.ts'
import { markBedsWorking } from '../shared/mark-beds-working.ts'
import type { ProposeInside, WantedJob } from '../shared/propose-job.ts'
import { type Began, readSince } from '../shared/read-typed-facts.ts'

const invalid = (message: string, field: string) => new AppError('invalid', `${message} Nothing was saved.`, { field })

/** What an input says that cannot be, in a sentence. */
function refuseNonsense(input: RecordCall, company: CompanyFacts): void {
  const { siteId, callerName, callerPhone, follows } = input
  if (!siteId && !callerName && !callerPhone) throw invalid('A call needs a caller: choose a site, or write a name or a number.', 'who')
  if (!siteId && (follows.what === 'visit' || follows.what === 'materials'))
    throw invalid('A job needs a site, and this caller has none. Add the site first, or call back.', 'follows')
  if ('day' in follows && follows.day < company.today) throw invalid('The day to call back has passed; choose today or later.', 'follows')
}

/** Since when the water is hard, as a span of days; null where it is not said to be. */
function hardSinceOf({ stillSoft, hardSince, hardSinceDay }: RecordCall, company: CompanyFacts): Exclude<Began, null> | null {
  const said = hardSince
    ? readSince(hardSince, company)
    : hardSinceDay && { earliestDay: hardSinceDay, latestDay: hardSinceDay, asWritten: '' }
  if (!said) return null
  if (stillSoft) throw invalid('The water can’t be soft today and hard since a day. Choose one.', 'hardSinceDay')
  if (said.earliestDay > company.today) throw invalid('Hard water can’t begin in the future; check the day.', 'hardSinceDay')
  return said
}

/** Site, softener and bed that the call is about; each 404 is the same as for one that does not exist. */
async function placeOf(tx: Tx, companyId: string, { siteId, softenerId }: RecordCall) {
  if (!siteId) {
    if (softenerId) throw notFound('softener')
    return null
  }
  const site = await tx.site.findFirst({
    where: { companyId, id: siteId, archivedAt: null },
    select: {
      tenures: { where: { toDay: null }, select: { customerId: true }, orderBy: { id: 'asc' }, take: 1 },
      softeners: { where: { archivedAt: null }, select: { id: true } },
    },
  })
  if (!site) throw notFound('site')
  if (softenerId && !site.softeners.some((one) => one.id === softenerId)) throw notFound('softener')
  // Where there is one softener, nobody is asked which.
  const only = site.softeners.length === 1 ? site.softeners[0]?.id : undefined
  return { siteId, customerId: site.tenures[0]?.customerId ?? null, softenerId: softenerId ?? only ?? null }
}

/** The softener's one bed in service; null where there are several or none. */
async function bedOf(tx: Tx, companyId: string, softenerId: string | null) {
  if (!softenerId) return null
  const beds = await tx.bed.findMany({
    where: { companyId, endedLatest: null, archivedAt: null, tank: { softenerId, archivedAt: null } },
    select: { id: true, beganEarliest: true },
    take: 2,
  })
  return beds.length === 1 ? (beds[0] ?? null) : null
}

/** The kind of job behind each visit that a call may ask for: a look is an inspection, a complaint a warranty visit. */
const KIND_OF: Readonly<Record<CalledForVisit, JobKind>> = {
  ...{ repair: 'repair', emergency: 'emergency', rebed: 'rebed' },
  'look-and-quote': 'inspection',
  complaint: 'warranty-return',
}

/**
 * Keeps a call, and does what follows from it in one transaction: a job, somebody on the list of whom to call, or nothing more. "Still soft" counts as seen
 * working that day, by telephone. A caller on no record is kept by name and number; no customer, site or softener is made up for them.
 */
export async function recordCall(scope: Scope & { personId: string }, input: RecordCall, propose: ProposeInside) {
  return runCommand(scope, 'calls.record-call', input, async (tx, command) => {
    const { companyId } = scope
    const company = await companyFacts(tx, companyId)
    refuseNonsense(input, company)
    const { sees, stillSoft, follows } = input
    const hard = hardSinceOf(input, company)
    const [words, advised] = [input.words || null, input.advised || null]
    const place = await placeOf(tx, companyId, input)
    const bed = await bedOf(tx, companyId, place?.softenerId ?? null)
    if ((stillSoft || hard) && !place?.softenerId) throw invalid('Soft or hard water is of one softener; choose it.', 'softenerId')
    const began = dayOf(bed?.beganEarliest ?? null)
    if (hard && began && hard.latestDay < began)
      throw invalid(`This bed was installed on ${formatDay(began, company)}, so it can’t have failed before.`, 'hardSinceDay')
    const complaint = follows.what === 'visit' && follows.visit === 'complaint'
    const rebed = complaint && place ? await lastRebedAt(tx, companyId, place.siteId) : null
    if (complaint && !rebed) throw invalid('No rebed at this site is on record, so none can be complained of. Choose a repair.', 'follows')
    const callId = newId()
    const quote = follows.what === 'visit' && follows.visit === 'look-and-quote'
    const askedFor = {
      ...{ by: 'call' as const, quote, rebedDay: rebed?.day ?? null, sees: sees ?? null },
      hard: hard ? { earliest: hard.earliestDay, latest: hard.latestDay } : null,
    }
    const kind = follows.what === 'visit' ? KIND_OF[follows.visit] : follows.what === 'materials' ? 'delivery' : null
    if (kind === 'rebed' && !bed)
      throw invalid('A rebed is for one bed, and this softener has none or several. Add the job from its bed.', 'follows')
    const proposed =
      kind && place
        ? await propose(tx, command, {
            siteId: place.siteId,
            ...(place.softenerId ? { softenerId: place.softenerId } : {}),
            ...(bed && kind !== 'delivery' ? { bedId: bed.id } : {}),
            kind,
            notes: words ?? undefined,
            ...(quote || rebed || sees || hard ? { askedFor } : {}),
          } as WantedJob)
        : null
    await tx.phoneCall.create({
      data: {
        ...{ companyId, id: callId, at: command.at, personId: scope.personId, follows: follows.what, sees, words, advised, stillSoft },
        ...{ siteId: place?.siteId, softenerId: place?.softenerId, customerId: place?.customerId, jobId: proposed?.jobId },
        ...{ visitId: rebed?.visitId, bedId: bed?.id },
        ...(hard && {
          hardSinceDay: dateOf(hard.earliestDay),
          hardSinceLatest: dateOf(hard.latestDay),
          hardSinceAsSaid: hard.asWritten || null,
        }),
        ...{ callerName: input.callerName || null, callerPhone: input.callerPhone || null },
      },
    })
    if (stillSoft && place?.softenerId) await markBedsWorking(tx, command, { softenerId: place.softenerId }, company.today, 'call')
    const cause = follows.what === 'quote' ? 'quote' : 'asked'
    const callBackId =
      'day' in follows ? await oweCall(tx, command, { cause, dueDay: follows.day, callId, siteId: place?.siteId ?? null }) : null
    const span = hard && { hardSinceDay: hard.earliestDay, hardSinceLatest: hard.latestDay }
    await command.audit('recorded', 'call', callId, { siteId: place?.siteId, follows: follows.what, sees, stillSoft, ...span })
    await command.announce('call', callId, 1)
    if (hard && bed) await command.announce('bed', bed.id)
    return { callId, jobId: proposed?.jobId ?? null, callBackId }
  })
}
