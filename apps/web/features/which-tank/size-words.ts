import type { TankIdentity } from '@almanac/softener/identify/identify-tank'

/** How sure a chance is called, by its key among the words. */
export function sureKey(chance: number) {
  if (chance >= 0.95) return 'sure/almost'
  if (chance >= 0.75) return 'sure/likely'
  return chance >= 0.5 ? 'sure/rather' : 'sure/open'
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
