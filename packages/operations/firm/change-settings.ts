import type { ChangeSettingsInput } from '@almanac/contract/firm'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { settingsIn } from '@almanac/database/read/firm-settings'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { SENDING_BOUNDS } from '@almanac/service-rules/messages/sending-times'
import { minuteOfClock } from '@almanac/units/calendar/zone-clock'
import { costRule, isCost } from '@almanac/units/cost-rules'
import { isLocale } from '@almanac/units/display'
import { type ClockDisplay, formatClockTime } from '@almanac/units/format-clock'
import { minorPer } from '@almanac/units/money'
import { checkAmounts } from '../shared/check-amounts.ts'
import { companyFacts } from '../shared/company-facts.ts'
import { isHolidayArea } from '../shared/public-holidays.ts'

/** Refuses a cost that is new and cannot be, or is unusual without a reason. */
function checkCosts(sent: Record<string, unknown>, before: Record<string, unknown>, currency: string, note: string | null): void {
  for (const [name, to] of Object.entries(sent))
    if (isCost(name) && typeof to === 'number' && to !== before[name])
      checkAmounts(
        { [name]: { kind: costRule(name, currency), value: to / minorPer(currency), unit: currency } },
        note ? { [name]: note } : undefined,
      )
}

/** When mails and texts may go out, in minutes of the day. Refuses what no customer should be woken by: 47 CFR 64.1200(c)(1). */
function sendingHours({ sendFrom, sendUntil }: { sendFrom: string; sendUntil: string }, display: ClockDisplay) {
  const [from, until] = [minuteOfClock(sendFrom), minuteOfClock(sendUntil)]
  if (from >= SENDING_BOUNDS.from && from < until && until <= SENDING_BOUNDS.until) return { from, until }
  const [opens, closes] = ['08:00', '21:00'].map((clock) => formatClockTime(clock, display))
  throw new AppError(
    'invalid',
    `Messages go out between ${opens} and ${closes} at the most, and start before they end. Nothing was saved; choose other times.`,
  )
}

/** Changes how the firm works and what its work costs: reminder lead, rebeds a month, the day's hours, costs, risk limit, locale. One audit line a value. */
export async function changeSettings(scope: Scope & { personId: string }, input: ChangeSettingsInput): Promise<{ version: number }> {
  const { commandId: _, version, note: typed, ...sent } = input
  const note = typed || null
  const { dayStart, dayEnd, lunchFrom, lunchUntil, sendFrom, sendUntil, locale, telephone, name, paper, ...plain } = sent
  if (locale !== undefined && !isLocale(locale))
    throw new AppError(
      'invalid',
      `"${locale}" isn’t a language and region we can write dates in. Nothing was saved; choose one such as en-US.`,
    )
  return runCommand(scope, 'firm.change-settings', input, async (tx, command) => {
    const { companyId } = scope
    if (minuteOfClock(dayEnd) <= minuteOfClock(dayStart)) {
      const company = await companyFacts(tx, companyId)
      const [begins, ends] = [formatClockTime(dayStart, company), formatClockTime(dayEnd, company)]
      throw new AppError('invalid', `The day cannot end at ${ends} when it begins at ${begins}. Nothing was saved; swap the times.`)
    }
    if (sent.holidayArea && !isHolidayArea(sent.holidayArea))
      throw new AppError('invalid', 'We don’t know the public holidays of that place. Nothing was saved; choose one from the list.')
    // A firm without a row works by the usual ones; both of two who change them at once then find the same row.
    await tx.companySettings.createMany({ data: [{ companyId, id: newId() }], skipDuplicates: true })
    const before = await settingsIn(tx, companyId)
    const hours = sendingHours(
      { ...before, ...(sendFrom && { sendFrom }), ...(sendUntil && { sendUntil }) },
      await companyFacts(tx, companyId),
    )
    const lunch = { from: lunchFrom ?? before.lunchFrom, until: lunchUntil ?? before.lunchUntil }
    if (lunch.until < lunch.from)
      throw new AppError('invalid', 'Lunch can’t start between those times: the second comes first. Nothing was saved; swap the times.')
    const { count } = await tx.companySettings.updateMany({
      where: { companyId, version: Math.max(1, version) },
      data: {
        ...plain,
        ...{ dayStartMinute: minuteOfClock(dayStart), dayEndMinute: minuteOfClock(dayEnd), version: { increment: 1 } },
        ...{ sendFromMinute: hours.from, sendUntilMinute: hours.until },
        ...{ lunchFromMinute: minuteOfClock(lunch.from), lunchUntilMinute: minuteOfClock(lunch.until) },
      },
    })
    await expectChanged(count, 'setting', version, sent, () => settingsIn(tx, companyId))
    checkCosts(sent, before, (await companyFacts(tx, companyId)).currency, note)
    // Left out, each stays as it is.
    await tx.company.updateMany({ where: { id: companyId }, data: { locale, telephone, name, paper } })
    const row = await tx.companySettings.findUniqueOrThrow({ where: { companyId }, select: { id: true, version: true } })
    for (const [field, to] of Object.entries(sent)) {
      const from = before[field as keyof typeof sent]
      if (to !== undefined && JSON.stringify(from) !== JSON.stringify(to))
        await command.audit('changed', 'company-settings', row.id, { field, from, to, note })
    }
    await command.announce('company-settings', row.id, row.version)
    // What other firms' fits say comes in, or goes out again, at once.
    if (sent.poolFits !== undefined && sent.poolFits !== before.poolFits)
      await command.enqueue('refit-company', { cause: 'refit' }, companyId)
    return { version: row.version }
  })
}
