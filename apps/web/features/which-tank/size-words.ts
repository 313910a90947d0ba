import type { TankIdentity } from '@almanac/softener/identify/identify-tank'

/** How sure, in words. */
export function sureWords(chance: number): string {
  if (chance >= 0.95) return 'almost certain'
  if (chance >= 0.75) return 'likely'
  return chance >= 0.5 ? 'more likely than not' : 'still open'
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
