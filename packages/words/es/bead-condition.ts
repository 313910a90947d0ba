import type { beadCondition as english } from '../en/bead-condition.ts'
import type { Translation } from '../translation.ts'

export const beadCondition: Translation<typeof english> = {
  firm: 'Firmes y enteras',
  'some-soft': 'Algunas blandas',
  mushy: 'Pastosas: la mayoría se aplasta entre los dedos',
  broken: 'Rotas o agrietadas, muchos finos',
  'iron-fouled': 'Color óxido',
  'resin-missing': 'Falta mucha resina',
}
