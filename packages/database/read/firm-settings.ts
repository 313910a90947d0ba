import type { Settings } from '@almanac/contract/firm'
import type { DayFill } from '@almanac/records/day-plan'
import type { Paper } from '@almanac/records/paper'
import type { Tx } from '../client.ts'
import { inCompany, type Scope } from '../in-company.ts'

/** What holds for a firm that has not said: the columns' own defaults. */
const USUAL_SETTINGS: Omit<Settings, 'locale' | 'telephone' | 'name' | 'paper'> = {
  headAddress: null,
  headMail: null,
  headLicence: null,
  logo: null,
  version: 0,
  reminderLeadDays: 60,
  reminderNotices: 1,
  reminderAgainDays: 30,
  sendFrom: '08:00',
  sendUntil: '20:00',
  rebedsPerMonth: 10,
  dayStart: '08:00',
  dayEnd: '17:00',
  plannedRebedMinor: null,
  failureMinor: null,
  beadsMinor: null,
  overtimeMinorPerHour: null,
  riskLimit: 0.3,
  poolFits: false,
  yardLatitude: null,
  yardLongitude: null,
  lunchMinutes: 0,
  lunchFrom: '11:30',
  lunchUntil: '13:00',
  inHandMinutes: 0,
  dayFill: 'usual',
  holidayArea: null,
  holidaysWorked: [],
}

const clockTime = (minute: number) => `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`

/** The firm's settings inside a transaction; version 0 with the usual ones where it has no row yet. */
export async function settingsIn(tx: Tx, companyId: string): Promise<Settings> {
  const { paper, ...texts } = await tx.company.findUniqueOrThrow({
    where: { id: companyId },
    select: { name: true, locale: true, telephone: true, paper: true },
  })
  const written = { ...texts, paper: paper as Paper }
  const row = await tx.companySettings.findUnique({ where: { companyId } })
  if (!row) return { ...USUAL_SETTINGS, ...written }
  const {
    version,
    reminderLeadDays,
    reminderNotices,
    reminderAgainDays,
    rebedsPerMonth,
    plannedRebedMinor,
    failureMinor,
    beadsMinor,
    overtimeMinorPerHour,
    riskLimit,
    poolFits,
    yardLatitude,
    yardLongitude,
    lunchMinutes,
    inHandMinutes,
    holidayArea,
    holidaysWorked,
    headAddress,
    headMail,
    headLicence,
  } = row
  return {
    ...{
      version,
      reminderLeadDays,
      reminderNotices,
      reminderAgainDays,
      rebedsPerMonth,
      plannedRebedMinor,
      failureMinor,
      beadsMinor,
      overtimeMinorPerHour,
      riskLimit,
      poolFits,
      yardLatitude,
      yardLongitude,
      lunchMinutes,
      inHandMinutes,
      holidayArea,
      holidaysWorked,
      headAddress,
      headMail,
      headLicence,
      ...written,
    },
    logo: row.logoWidth && row.logoHeight ? { width: row.logoWidth, height: row.logoHeight } : null,
    dayFill: row.dayFill as DayFill,
    dayStart: clockTime(row.dayStartMinute),
    dayEnd: clockTime(row.dayEndMinute),
    lunchFrom: clockTime(row.lunchFromMinute),
    lunchUntil: clockTime(row.lunchUntilMinute),
    sendFrom: clockTime(row.sendFromMinute),
    sendUntil: clockTime(row.sendUntilMinute),
  }
}

/** The firm's settings for its screen. */
export async function readSettings(scope: Pick<Scope, 'companyId'>): Promise<Settings> {
  return inCompany(scope, (tx) => settingsIn(tx, scope.companyId))
}
