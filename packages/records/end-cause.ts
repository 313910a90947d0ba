/** Why a bed ended. What a cause says about how long resin lasts: service-rules/close-out/life-evidence. */
export const endCauses = ['worn', 'iron-fouled', 'beads-lost', 'oxidised', 'tank-cracked', 'removed-for-convenience', 'unknown'] as const
export type EndCause = (typeof endCauses)[number]

export const endCauseWords: Readonly<Record<EndCause, string>> = {
  worn: 'Worn out',
  'iron-fouled': 'Fouled by iron',
  'beads-lost': 'Beads lost (broken distributor)',
  oxidised: 'Damaged by oxidant (soft, swollen beads)',
  'tank-cracked': 'Tank frozen or cracked',
  'removed-for-convenience': 'Removed early',
  unknown: 'Not known',
}
