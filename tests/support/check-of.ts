import type { Check, CheckId } from '@almanac/softener/diagnosis/check-types'
import { CHECKS } from '@almanac/softener/diagnosis/checks'

/** A check of the diagnosis by its id. */
export function checkOf(id: CheckId): Check {
  const check = CHECKS.find((one) => one.id === id)
  if (check === undefined) throw new Error(`There is no check "${id}".`)
  return check
}
