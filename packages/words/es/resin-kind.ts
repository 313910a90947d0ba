import type { resinKind as english } from '../en/resin-kind.ts'
import type { Translation } from '../translation.ts'

export const resinKind: Translation<typeof english> = {
  'gel-8': '8 % de entrecruzamiento',
  'gel-10': '10 % de entrecruzamiento',
  'fine-mesh': 'malla fina',
  unknown: 'no se sabe',
}
