import type { tabletFact as english } from '../en/tablet-fact.ts'
import type { Translation } from '../translation.ts'

export const tabletFact: Translation<typeof english> = {
  jobKind: 'Clase de trabajo',
  started: 'Empezó',
  finished: 'Terminó',
  hardnessReason: 'Por qué la salida está dura o no se midió',
  part: 'Pieza usada',
  yes: 'sí',
  no: 'no',
  withReason: '{value} ({reason})',
  missing: 'Números que nunca llegaron',
  fromUntil: 'de {from} a {until}',
  'measured/outletHardnessGpg': 'Dureza a la salida',
  'measured/rawHardnessGpg': 'Dureza del agua cruda',
  'measured/inletFreeChlorineMgL': 'Cloro libre a la entrada',
  'measured/inletTotalChlorineMgL': 'Cloro total a la entrada',
  'measured/rawIronMgL': 'Hierro en el agua cruda',
  'measured/capacityShare': 'Parte de la capacidad que queda',
  'measured/beadMoisturePercent': 'Humedad de las perlas',
  'measured/pressurePsi': 'Presión del agua',
  'measured/serviceDropPsi': 'Caída de presión en servicio',
  'measured/backwashGpm': 'Caudal de retrolavado',
}
