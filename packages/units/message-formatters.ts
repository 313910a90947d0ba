/** Made once for each locale and its options: making one is slow. */
function kept<Given extends unknown[], Made>(make: (...given: Given) => Made): (...given: Given) => Made {
  const made = new Map<string, Made>()
  return (...given) => {
    const key = JSON.stringify(given)
    const known = made.get(key)
    if (known !== undefined) return known
    const fresh = make(...given)
    made.set(key, fresh)
    return fresh
  }
}

/** What messages in ICU's syntax choose their plurals by, and write their counts with. */
export const messageFormatters = {
  getDateTimeFormat: kept((...given: ConstructorParameters<typeof Intl.DateTimeFormat>) => new Intl.DateTimeFormat(...given)),
  getNumberFormat: kept((...given: ConstructorParameters<typeof Intl.NumberFormat>) => new Intl.NumberFormat(...given)),
  getPluralRules: kept((...given: ConstructorParameters<typeof Intl.PluralRules>) => new Intl.PluralRules(...given)),
}
