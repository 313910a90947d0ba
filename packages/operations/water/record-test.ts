import type { RecordTestInput } from '@almanac/contract/water'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { type DayDisplay, formatDay } from '@almanac/units/format-day'
import { enteredOf } from '../shared/check-amounts.ts'
import { companyFacts } from '../shared/company-facts.ts'
import { refreshSiteForecasts } from '../shared/refresh-site-forecasts.ts'
import { checkWater, hardnessGpg, inMgL } from './canonical-values.ts'

function checkValues(input: RecordTestInput, today: string, display: DayDisplay): void {
  const { hardness, freeChlorine, totalChlorine, iron, manganese, ph } = input
  if (![hardness, freeChlorine, totalChlorine, iron, manganese, ph].some((value) => value !== undefined))
    throw new AppError('invalid', 'You entered no value, so nothing was saved. Enter at least one.')
  if (input.day > today)
    throw new AppError('invalid', `${formatDay(input.day, display)} is in the future. Nothing was saved; correct the day.`)
  checkWater(input)
  const free = inMgL(freeChlorine)
  const total = inMgL(totalChlorine)
  if (free !== null && total !== null && free > total)
    throw new AppError(
      'invalid',
      `Free chlorine (${free} mg/L) can’t be more than total chlorine (${total} mg/L). Nothing was saved; check both readings.`,
    )
}

/** Records values measured on one day at one point, and has the site's beds forecast again. */
export async function recordTest(scope: Scope & { personId: string }, input: RecordTestInput): Promise<{ testId: string }> {
  const { companyId } = scope
  return runCommand(scope, 'water.record-test', input, async (tx, command) => {
    const company = await companyFacts(tx, companyId)
    checkValues(input, dayIn(company.timeZone, command.at), company)
    const site = await tx.site.findFirst({ where: { companyId, id: input.siteId, archivedAt: null }, select: { id: true } })
    if (!site) throw notFound('site')
    if (input.softenerId) {
      const softener = await tx.softener.findFirst({
        where: { companyId, id: input.softenerId, siteId: input.siteId },
        select: { id: true },
      })
      if (!softener) throw notFound('softener at this site')
    }
    const { hardness, freeChlorine, totalChlorine, iron, manganese, ph } = input
    const typed = {
      hardness,
      freeChlorine,
      totalChlorine,
      iron,
      manganese,
      ph: ph !== undefined && input.why?.ph ? { value: ph, unit: '' } : null,
    }
    const id = newId()
    await tx.waterTest.create({
      data: {
        companyId,
        id,
        siteId: input.siteId,
        softenerId: input.softenerId ?? null,
        day: dateOf(input.day),
        point: input.point,
        hardnessGpg: hardnessGpg(hardness),
        freeChlorineMgL: inMgL(freeChlorine),
        totalChlorineMgL: inMgL(totalChlorine),
        ironMgL: inMgL(iron),
        manganeseMgL: inMgL(manganese),
        ph: input.ph ?? null,
        entered: enteredOf(typed, input.why),
        source: 'typed in',
      },
    })
    await command.audit('recorded', 'water-test', id, { siteId: input.siteId, day: input.day, point: input.point })
    await command.announce('site', input.siteId)
    await refreshSiteForecasts(tx, command, input.softenerId ? { softenerId: input.softenerId } : { siteId: input.siteId })
    return { testId: id }
  })
}
