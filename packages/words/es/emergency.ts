import type { emergency as english } from '../en/emergency.ts'
import type { Translation } from '../translation.ts'

export const emergency: Translation<typeof english> = {
  name: 'Emergencia',
  title: 'Emergencia: envíe a alguien hoy',
  why: 'Perlas en las llaves: el lecho se sale por el distribuidor. Tapan mallas, válvulas y el calentador, y salen más cada vez que se abre el agua.',
  say: 'Diga por teléfono, en este orden',
  'say/bypass': 'Ponga el ablandador en bypass: las palancas o perillas detrás de la válvula, o las llaves de paso de los dos lados.',
  'say/hot-water': 'No use agua caliente. Apague el calentador (gas: en piloto), luego cierre su entrada de agua fría.',
  'say/appliances': 'Apague la lavadora, el lavavajillas y la máquina de hielo, y cierre sus llaves.',
  'say/aerators': 'No desenrosque todavía aireadores ni regaderas: detienen las perlas. Barra las perlas del piso, ruedan.',
  'say/drinking': 'Las perlas no son venenosas, pero no beba el agua hasta que salga clara.',
  'say/main': 'Si el bypass no cierra, cierre la llave principal: pregunte dónde está. Alguien va hoy.',
  do: 'Quien va al sitio',
  'do/bypass': 'Bypass, probado que cierra. Entrada de agua fría del calentador cerrada.',
  'do/flush':
    'Aireadores y regaderas fuera; enjuague desde la llave principal hacia afuera, primero la fría, llave por llave, hasta que no salgan perlas.',
  'do/screens': 'Limpie las mallas de llaves, lavadora y lavavajillas; enjuague la línea de la máquina de hielo y tire su hielo.',
  'do/heater': 'Vacíe y enjuague el calentador de agua; si no tiene drenaje, pregunte al servicio de su fabricante.',
  'do/stays': 'El ablandador queda en bypass hasta cambiar el lecho y el distribuidor.',
  add: 'Agregar trabajo de emergencia',
  source: 'Fuente: {source}.',
}
