import type { Settings, SettingsValues } from '@almanac/contract/firm'
import { choicesOf } from '@almanac/records/choices'
import { offeredLocales } from '@almanac/records/country'
import { dayFills, dayFillWords } from '@almanac/records/day-plan'
import { HEAD_LINES } from '@almanac/records/letterhead'
import { papers, paperWords } from '@almanac/records/paper'
import { type AmountKind, type AmountRule, ruleOf } from '@almanac/units/amount-kinds'
import type { AmountSaid } from '@almanac/units/amount-said'
import { costRule, isCost } from '@almanac/units/cost-rules'
import { formatDuration } from '@almanac/units/format-clock'
import { minorPer } from '@almanac/units/money'
import { readAmount } from '@almanac/units/read-amount'
import { numberText, readNumber } from '@almanac/units/read-number'
import { isReason } from '@/client/amounts'
import { localeWords } from '@/client/locale-words'
import type { Texts } from './figure-amounts.ts'
import type { FormField } from './figure-forms.ts'

export type SettingName = keyof SettingsValues

export const COSTS: readonly SettingName[] = ['plannedRebedMinor', 'failureMinor', 'beadsMinor', 'overtimeMinorPerHour', 'riskLimit']
export const DAYS: readonly SettingName[] = [
  ...(['rebedsPerMonth', 'dayStart', 'dayEnd', 'lunchMinutes', 'lunchFrom', 'lunchUntil', 'inHandMinutes', 'dayFill'] as const),
  ...(['yardLatitude', 'yardLongitude'] as const),
]

/** When customers are reminded, how often, and at which hours. */
export const REMINDERS: readonly SettingName[] = ['reminderLeadDays', 'reminderNotices', 'reminderAgainDays', 'sendFrom', 'sendUntil']

/** Times of day among the settings. */
export const CLOCKS: readonly SettingName[] = ['dayStart', 'dayEnd', 'lunchFrom', 'lunchUntil', 'sendFrom', 'sendUntil']

/** Minutes to choose from. */
const MINUTES: Partial<Record<SettingName, readonly number[]>> = {
  lunchMinutes: [0, 15, 20, 30, 45, 60],
  inHandMinutes: [0, 15, 30, 45, 60, 90, 120],
}
const minuteChoices = (name: SettingName, locale: string) =>
  MINUTES[name]?.map((minutes) => ({ value: String(minutes), label: minutes === 0 ? 'none' : formatDuration(minutes, { locale }) }))

/** What customers read: the company's name, where to call, and how numbers, money, days and clocks are written; and on what it prints. */
export const DETAILS: readonly SettingName[] = ['name', 'telephone', 'headAddress', 'headMail', 'headLicence', 'locale', 'paper']

/** Settings of a few lines. */
const LINES: Partial<Record<SettingName, number>> = { headAddress: HEAD_LINES.address, headLicence: HEAD_LINES.licence }

/** The locales to choose from, with the one that holds now. */
const localeChoices = (now: string) => [...new Set([now, ...offeredLocales])].sort().map((value) => ({ value, label: localeWords(value) }))

const HINTS: Partial<Record<SettingName, string>> = {
  telephone: 'On customers’ pages and papers, as (630) 555-0142',
  headAddress: 'Up to four lines, at the head of letters and reports',
  headLicence: 'Up to two lines, as Plumbing license 058-123456',
  plannedRebedMinor: 'Everything: people, resin, driving',
  failureMinor: 'The rush rebed, the extra visit, the customer’s trouble',
  beadsMinor: 'Flushing, screens, heater, an evening call',
  riskLimit: 'The risk you accept that a bed fails before its rebed',
  yardLatitude: 'Degrees north, as 41.7106; drives start and end there',
  yardLongitude: 'Degrees east, as -88.4215',
  lunchMinutes: 'For everyone without breaks of their own',
  inHandMinutes: 'Plans and best places leave it free, so that a long visit doesn’t end the day late',
  dayFill: 'Late at most one day in ten: more driving, and jobs may wait longer',
  reminderLeadDays: 'Before a bed’s due window starts',
  reminderNotices: '1 to 3 for each due window; each waits for your approval',
  reminderAgainDays: 'After a notice that nobody answered',
  sendFrom: 'Emails and texts, at the customer’s own clock',
}

const KINDS: Partial<Record<SettingName, AmountKind>> = {
  riskLimit: 'riskShare',
  reminderLeadDays: 'reminderDays',
  reminderNotices: 'notices',
  reminderAgainDays: 'againDays',
  rebedsPerMonth: 'rebedsPerMonth',
  yardLatitude: 'latitude',
  yardLongitude: 'longitude',
}
const MAY_BE_EMPTY = new Set<SettingName>(['telephone', 'headAddress', 'headMail', 'headLicence', 'yardLatitude', 'yardLongitude'])

function choicesFor(name: SettingName, now: string): FormField['choices'] {
  if (name === 'locale') return localeChoices(now)
  if (name === 'paper') return choicesOf(papers, paperWords)
  return name === 'dayFill' ? choicesOf(dayFills, dayFillWords) : minuteChoices(name, now)
}

/** What a setting that is an amount may be; undefined for a time or a choice. */
function ruleOfSetting(name: SettingName, currency: string): AmountRule | undefined {
  if (isCost(name)) return costRule(name, currency)
  const kind = KINDS[name]
  return kind && ruleOf(kind)
}

/** What is typed for each setting. */
export function settingFields(
  names: readonly SettingName[],
  nameOf: (name: SettingName) => string,
  currency: string,
  now: string,
): FormField[] {
  return names.map((name) => ({
    name,
    label: nameOf(name),
    choices: choicesFor(name, now),
    hint: HINTS[name],
    lines: LINES[name],
    rule: ruleOfSetting(name, currency),
    required: !isCost(name) && !MAY_BE_EMPTY.has(name),
  }))
}

export function settingTexts(settings: Settings, names: readonly SettingName[], currency: string, locale: string): Texts {
  return Object.fromEntries(
    names.map((name) => {
      const value = settings[name]
      if (value === null) return [name, '']
      if (typeof value !== 'number') return [name, String(value)]
      return [name, numberText(isCost(name) ? value / minorPer(currency) : name === 'riskLimit' ? value * 100 : value, locale)]
    }),
  )
}

/** The settings with what was typed, or what is wrong with it, by field. What is unusual and was not so before is asked back where `why` is no reason. */
export function readSettingTexts(
  settings: Settings,
  names: readonly SettingName[],
  texts: Texts,
  { currency, locale, why, say }: { currency: string; locale: string; why: string; say: (said: AmountSaid) => string },
): { values: SettingsValues; errors: Texts } {
  const { version: _version, logo: _logo, ...values } = settings
  const errors: Texts = {}
  const changed: Record<string, unknown> = {}
  for (const name of names) {
    const text = (texts[name] ?? '').trim()
    const rule = ruleOfSetting(name, currency)
    const reading = rule && readAmount(rule, text, { locale })
    if (name in MINUTES) changed[name] = readNumber(text) ?? 0
    else if (!reading) changed[name] = text === '' && MAY_BE_EMPTY.has(name) ? null : text
    else if (reading.state === 'refused') errors[name] = say(reading.said)
    else if (reading.state === 'read') {
      changed[name] = isCost(name)
        ? Math.round(reading.value * minorPer(currency))
        : name === 'riskLimit'
          ? reading.value / 100
          : reading.value
      if (reading.odd !== null && changed[name] !== settings[name] && !isReason(why)) errors[name] = say(reading.odd)
    } else if (isCost(name) || MAY_BE_EMPTY.has(name)) changed[name] = null
    else errors[name] = 'Type a number here.'
  }
  return { values: { ...values, ...changed } as SettingsValues, errors }
}
