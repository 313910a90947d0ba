/** What a supply disinfects with. */
export const disinfectants = ['free-chlorine', 'chloramine', 'none'] as const
export type Disinfectant = (typeof disinfectants)[number]

/** What the record of a supply may say of it. */
export const recordedDisinfectants = [...disinfectants, 'unknown'] as const
export type RecordedDisinfectant = (typeof recordedDisinfectants)[number]

export const disinfectantWords: Readonly<Record<RecordedDisinfectant, string>> = {
  'free-chlorine': 'free chlorine',
  chloramine: 'chloramine',
  none: 'none',
  unknown: 'not known',
}
