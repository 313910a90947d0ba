import type { plot as english } from '../en/plot.ts'
import type { Translation } from '../translation.ts'

export const plot: Translation<typeof english> = {
  today: 'hoy',
  dueBetween: 'Vence entre {early} y {late}, a la mitad {middle}',
  dueFrom: 'Vence desde {early}, sin fin conocido, a la mitad {middle}',
  noCurve: 'Aún no hay curva: falta hacer el pronóstico.',
  early: 'pronto {month}',
  middle: 'mitad {month}',
  late: 'tarde {month}',
  working: '{month}: aún sirve {share}',
  workingBetween: '{month}: aún sirve {share}, entre {low} y {high}',
  month: 'Mes',
  stillWorking: 'Aún sirve',
  low: 'Mínimo',
  high: 'Máximo',
  chanceWorking: 'probabilidad de que el lecho aún sirva',
  maybe: 'lo que puede ser',
  readCurve: 'Leer la curva día por día',
  day: 'Día',
  drawn: 'Tomada',
  noTest: 'Aún no hay ninguna prueba de {quantity}.',
  readTests: 'Leer las pruebas de {quantity}',
  under: 'menos de {value}',
  'point/raw': 'agua cruda',
  'point/softener-inlet': 'entrada del ablandador',
  'point/softened': 'agua ablandada',
}
