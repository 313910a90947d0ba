/** Why a bed ended: a key for each value of `endCauses`. */
export const endCause = {
  worn: 'Worn out',
  'iron-fouled': 'Fouled by iron',
  'beads-lost': 'Beads lost (broken distributor)',
  oxidised: 'Damaged by oxidant (soft, swollen beads)',
  'tank-cracked': 'Tank frozen or cracked',
  'removed-for-convenience': 'Removed early',
  unknown: 'Not known',
} as const
