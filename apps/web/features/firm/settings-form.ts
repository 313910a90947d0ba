import type { Settings, SettingsValues } from '@almanac/contract/firm'
import { minorPer } from '@almanac/units/money'
import type { FormField, Texts } from './figure-forms.ts'
import { localeWords, number } from './figure-words.ts'

export type SettingName = keyof SettingsValues

export const COSTS: readonly SettingName[] = ['plannedRebedMinor', 'failureMinor', 'beadsMinor', 'overtimeMinorPerHour', 'riskLimit']
export const DAYS: readonly SettingName[] = ['reminderLeadDays', 'rebedsPerMonth', 'dayStart', 'dayEnd', 'yardLatitude', 'yardLongitude']

/** How numbers, money, days and clocks are written. */
export const WRITING: readonly SettingName[] = ['locale']

/** Offered because the words are English, Spanish or of a neighbour; each is shown by what it does. */
const LOCALES = ['en-US', 'en-GB', 'en-IE', 'en-CA', 'en-AU', 'en-NZ', 'es-US', 'es-MX', 'fr-CA', 'fr-FR', 'de-DE', 'nl-NL']

/** The locales to choose from, with the one that holds now. */
export const localeChoices = (now: string) =>
  (LOCALES.includes(now) ? LOCALES : [now, ...LOCALES]).map((value) => ({ value, label: localeWords(value) }))

const HINTS: Partial<Record<SettingName, string>> = {
  plannedRebedMinor: 'All in: people, resin, driving',
  failureMinor: 'The rebed in haste, the extra visit, the customer’s trouble',
  beadsMinor: 'Flushing, screens, heater, an evening call',
  riskLimit: 'The chance you accept that a bed fails before its rebed',
  yardLatitude: 'Degrees north, as 41.7106; drives start and end there',
  yardLongitude: 'Degrees east, as -88.4215',
  reminderLeadDays: 'Before the early date of a bed’s due window',
}

const isMoney = (name: SettingName) => /Minor/.test(name)
/** Degrees from the middle of the earth's lines: below 0 in the south and west. */
const DEGREES: Partial<Record<SettingName, number>> = { yardLatitude: 90, yardLongitude: 180 }

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
    choices: name === 'locale' ? localeChoices(now) : undefined,
    hint: HINTS[name],
    unit: isMoney(name)
      ? currency
      : name === 'riskLimit'
        ? '%'
        : name === 'reminderLeadDays'
          ? 'days'
          : name === 'rebedsPerMonth'
            ? 'rebeds'
            : undefined,
    required: !isMoney(name) && !(name in DEGREES),
  }))
}

export function settingTexts(settings: Settings, names: readonly SettingName[], currency: string): Texts {
  return Object.fromEntries(
    names.map((name) => {
      const value = settings[name]
      if (value === null) return [name, '']
      if (isMoney(name)) return [name, String((value as number) / minorPer(currency))]
      return [name, name === 'riskLimit' ? number((value as number) * 100, 1) : String(value)]
    }),
  )
}

/** The settings with what was typed, or what is wrong with it, by field. */
export function readSettingTexts(
  settings: Settings,
  names: readonly SettingName[],
  texts: Texts,
  currency: string,
): { values: SettingsValues; errors: Texts } {
  const { version: _version, ...values } = settings
  const errors: Texts = {}
  const changed: Record<string, unknown> = {}
  for (const name of names) {
    const text = (texts[name] ?? '').trim().replace(',', '.')
    const value = Number(text)
    if (name === 'dayStart' || name === 'dayEnd' || name === 'locale') changed[name] = (texts[name] ?? '').trim()
    else if (text === '' && (isMoney(name) || name in DEGREES)) changed[name] = null
    else if (DEGREES[name] !== undefined) {
      if (Math.abs(value) <= DEGREES[name]) changed[name] = value
      else errors[name] = `Degrees lie between -${DEGREES[name]} and ${DEGREES[name]}.`
    } else if (text === '' || !Number.isFinite(value) || value < 0) errors[name] = 'Type a number, such as 40.'
    else if (isMoney(name)) changed[name] = Math.round(value * minorPer(currency))
    else if (name === 'riskLimit') changed[name] = value / 100
    else if (Number.isInteger(value)) changed[name] = value
    else errors[name] = 'Type a whole number, such as 40.'
  }
  if (typeof changed.riskLimit === 'number' && !(changed.riskLimit >= 0.01 && changed.riskLimit <= 1))
    errors.riskLimit = 'The risk lies between 1 and 100 %.'
  return { values: { ...values, ...changed } as SettingsValues, errors }
}
