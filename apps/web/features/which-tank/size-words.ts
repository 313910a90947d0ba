import type { TankIdentity } from '@almanac/softener/identify/identify-tank'
import { formatPercent } from '@almanac/units/format'

/** How sure, in words. */
export function sureWords(chance: number): string {
  if (chance >= 0.95) return 'sure enough to order by'
  if (chance >= 0.75) return 'likely'
  return chance >= 0.5 ? 'more likely than not' : 'still open'
}

/** A share that is neither nothing nor all is never shown as such. */
export function shareWords(chance: number): string {
  if (chance > 0.99) return 'over 99 %'
  return chance < 0.01 ? 'under 1 %' : formatPercent(chance)
}

/** Where the field of a question stands on the page. */
export const FIELD_OF_ASK: Readonly<Record<TankIdentity['next'][number]['id'], string>> = {
  label: 'label',
  circumferenceIn: 'round',
  heightIn: 'rim',
  heightWithValveIn: 'top',
  diameterIn: 'across',
  jacket: 'sleeve',
}
