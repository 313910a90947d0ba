const found = new Map<string, string | null>()

/**
 * The region's own locale where the platform does not know how a language is written there, as Spanish in Britain: it would write that as in Spain, with
 * commas for points. Null where it knows.
 */
export function regionLocale(locale: string): string | null {
  let own = found.get(locale)
  if (own === undefined) {
    const { region } = new Intl.Locale(locale)
    const known = region === undefined || new Intl.NumberFormat(locale).resolvedOptions().locale.split('-').includes(region)
    own = known ? null : `${new Intl.Locale('und', { region }).maximize().language}-${region}`
    found.set(locale, own)
  }
  return own
}
