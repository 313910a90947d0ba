import type { outcomeMeaning as english } from '../en/outcome-meaning.ts'
import type { Translation } from '../translation.ts'

export const outcomeMeaning: Translation<typeof english> = {
  done: 'El trabajo está terminado y el ablandador otra vez en servicio.',
  'made-safe': 'La casa tiene agua por el bypass. El trabajo no está terminado y necesita otra visita.',
  'left-as-found': 'Paró antes de abrir nada. El ablandador funciona como lo encontró; alguien vuelve.',
  'no-access': 'No se pudo llegar al ablandador. No se tocó nada; hace falta otra visita.',
  'bed-not-at-fault': 'El problema estaba en otra parte. El lecho sigue en servicio y cuenta como visto funcionando hoy.',
  condemned: 'El tanque no debe usarse más. Su lecho termina sin uno nuevo y el ablandador queda en bypass.',
}
