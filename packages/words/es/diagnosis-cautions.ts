import type { diagnosisCautions as english } from '../en/diagnosis-cautions.ts'
import type { Translation } from '../translation.ts'

export const diagnosisCautions: Translation<typeof english> = {
  overflow:
    'Mantenga libre el rebosadero: un tanque de salmuera que se sigue llenando inunda el piso. Si el nivel sube, ponga el ablandador en bypass.',
  'look-only': 'Solo mire: no quite ninguna cubierta, y no toque nada con las manos mojadas ni sobre piso mojado.',
  'turn-slowly': 'Gire el bypass despacio. Arriba de 80 psi (5.5 bar) la casa necesita un regulador de presión.',
  'poured-before':
    'Nunca mezcle hipoclorito de sodio con limpiador de hierro: produce gas tóxico. Pregunte qué se echó antes en el tanque de salmuera.',
  'drain-takes-it': 'Corre agua al drenaje: antes de empezar vea que el tubo de descarga o el cárcamo la admitan.',
  'cover-on': 'Deje puesta la cubierta de la válvula mientras esté enchufada.',
  'bypass-first': 'Bypass, probado que cierra; luego retrolavado hasta que el drenaje pare. No se abre nada mientras hay presión.',
  'unplug-last': 'Desenchufe solo cuando ya no hay presión: sin corriente la válvula no puede dejarla salir.',
  'beads-roll': 'Las perlas mojadas ruedan bajo los pies: ponga una lona en el piso, y barra antes de caminar.',
  'rinse-between':
    'Nunca mezcle hipoclorito de sodio con limpiador de hierro: produce gas tóxico. Enjuague uno por completo antes de acercar el otro, y ventile el cuarto.',
}
