/** The values of an enumeration with their words, in the order to offer them. */
export function choicesOf<Value extends string>(
  values: readonly Value[],
  words: Readonly<Record<Value, string>>,
): { value: Value; label: string }[] {
  return values.map((value) => ({ value, label: words[value] }))
}

/** The value a stored or chosen word stands for; null for any other word. */
export function oneOf<Value extends string>(values: readonly Value[], word: string | null | undefined): Value | null {
  return values.find((value) => value === word) ?? null
}
