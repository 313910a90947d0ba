import type { steps as english } from '../en/steps.ts'
import type { Translation } from '../translation.ts'

export const steps: Translation<typeof english> = {
  'stop-and-refer': '¿Es seguro empezar?',
  'stop-and-refer/text':
    'Revise el lugar antes de descargar. Si encuentra algo de esto, pare, déjelo seguro y derive el trabajo. Mandan el código local de plomería y las personas con licencia.',
  'stop-and-refer/text-short':
    'Si encuentra algo de esto, pare y derive el trabajo. Mandan el código local de plomería y las personas con licencia.',
  'stop-and-refer/brief': 'Revise el lugar antes de descargar.',
  'check-water': 'Primero revise el agua',
  'check-water/text':
    'Mida la dureza antes del ablandador y a la salida de la válvula. Compare con la última prueba. Si cambió el suministro, o el ablandador está en bypass, la resina nueva no lo arregla.',
  'check-water/text-new': 'Pruebe el agua cruda: con ella se ajusta el ablandador nuevo. Lea la presión.',
  'check-water/brief': 'Compare con la última prueba.',
  'record-as-found': 'Registre cómo lo encontró',
  'record-as-found/text':
    'Tome una muestra a la salida de la válvula. Fotografíe la válvula, la tubería, el drenaje y el tanque de salmuera. Anote los ajustes de la válvula. Filtros o carbón antes: póngalos en bypass mientras trabaja, cámbielos si toca.',
  'record-as-found/brief':
    'Muestra a la salida de la válvula. Fotografíe todo. Anote los ajustes. Filtros antes en bypass, cambiados si toca.',
  'close-hot-side': 'Cierre el lado de agua caliente',
  'close-hot-side/text':
    'Apague o baje el calentador de agua: gas en piloto, eléctrico cortado en el interruptor. Luego cierre su entrada fría, para que nada regrese de él.',
  'close-hot-side/brief': 'Calentador apagado o bajo (gas: piloto), luego cierre su entrada fría.',
  'prove-bypass': 'Bypass, y compruebe que cierra',
  'prove-bypass/text':
    'Ponga el ablandador en bypass. Compruebe que cierra: con la válvula en retrolavado, o con una llave abierta del lado del ablandador, el flujo debe apagarse y no volver.',
  'prove-bypass/text-none':
    'No hay bypass. Cierre las llaves de paso antes y después del ablandador, o la principal. Abra una llave fría: no debe salir agua.',
  'prove-bypass/text-alternating':
    'Este es {tank}; el otro sirve la casa. Ponga el otro en servicio, luego cierre la entrada y la salida de {tank}, o ponga en bypass todo el ablandador si comparten un cabezal. Compruebe que cierra: una llave de su lado debe apagarse y no volver.',
  'prove-bypass/text-parallel':
    'Este es {tank}; ambos trabajan a la vez. Cierre la entrada y la salida de {tank}; el otro sirve la casa solo, con la mitad del flujo. Sin llaves propias: ponga en bypass todo el ablandador. Compruebe que cierra: una llave de su lado debe apagarse y no volver.',
  'prove-bypass/brief': 'Con retrolavado o una llave de su lado abierta, el flujo debe apagarse.',
  'prove-bypass/brief-none': 'Sin bypass: cierre las llaves de ambos lados, o la principal. Una llave fría abierta debe quedar seca.',
  'prove-bypass/brief-twin': 'Solo {tank}: entrada y salida cerradas, el otro sirve. Una llave de su lado debe apagarse.',
  'pressure-off': 'Libere la presión',
  'pressure-off/text':
    'Lleve la válvula a retrolavado mientras aún tiene corriente. Vea el drenaje correr y luego parar. Compruébelo de otra manera: una llave o manómetro del lado del ablandador queda muerto. Un drenaje tapado o congelado también está quieto.',
  'pressure-off/text-by-hand':
    'Gire la válvula a retrolavado a mano. Vea el drenaje correr y luego parar. Compruébelo de otra manera: una llave o manómetro del lado del ablandador queda muerto. Un drenaje tapado o congelado también está quieto.',
  'pressure-off/text-short':
    'Ponga el ablandador en bypass y compruebe que cierra. Lleve la válvula a retrolavado mientras tiene corriente: vea el drenaje correr y luego parar. Una llave o manómetro del lado del ablandador también debe quedar muerto. Solo entonces desenchúfela.',
  'pressure-off/brief':
    'A retrolavado mientras tiene corriente: drenaje visto correr y parar. Segunda prueba: una llave o manómetro de su lado, muerto.',
  'pressure-off/brief-by-hand':
    'A retrolavado a mano: drenaje visto correr y parar. Segunda prueba: una llave o manómetro de su lado, muerto.',
  'power-off': 'Desenchufe la válvula',
  'power-off/text': 'Solo ahora desenchufe la válvula.',
  'power-off/brief': 'Solo ahora desenchufe la válvula.',
  'bonding-jumper': 'Coloque el puente de unión',
  'bonding-jumper/text': 'Coloque un puente de unión de un lado a otro del ablandador antes de abrir la tubería.',
  'bonding-jumper/text-unknown': 'Si la tubería es de metal, coloque un puente de unión de un lado a otro del ablandador antes de abrirla.',
  'bonding-jumper/brief': 'De un lado a otro del ablandador, antes de abrir la tubería.',
  'bonding-jumper/brief-unknown': 'Tubería de metal: de un lado a otro del ablandador, antes de abrirla.',
  'remove-valve': 'Retire la válvula',
  'remove-valve/text':
    'Desconecte las líneas de drenaje y de salmuera. Suelte los clips del bypass y el enchufe del medidor. Luego desenrosque la válvula a mano, levántela derecha del tubo y póngala sobre algo limpio.',
  'remove-valve/brief': 'Drenaje y salmuera desconectados, bypass y medidor sueltos. Luego desenrosque a mano, levante derecho del tubo.',
  'measure-bed': 'Mida el lecho, tome una muestra',
  'measure-bed/text':
    'Antes de vaciar: mida la profundidad del lecho y tome una cucharada de perlas de arriba. Firmes o blandas, enteras o rotas, color.',
  'measure-bed/brief': 'Antes de vaciar: profundidad del lecho, una cucharada de perlas de arriba.',
  'drain-tank': 'Vacíe el tanque, con entrada de aire',
  'drain-tank/text': 'Saque el agua con sifón o aspiradora. Mantenga libre la abertura, para que entre aire mientras sale agua.',
  'drain-tank/brief': 'Saque el agua con sifón o aspiradora, con la abertura libre.',
  'take-out-media': 'Saque el tubo y el lecho viejo',
  'take-out-media/text':
    'Entre dos personas, vuelque el tanque sobre una lona, o aspírelo donde está. Saque el tubo cuando se suelte. Recoja cada perla.',
  'take-out-media/text-unknown':
    'Hasta 12 in (30 cm) de ancho y 150 lb (68 kg) vaciado, dos personas vuelcan el tanque sobre una lona. Uno mayor se aspira donde está. Saque el tubo cuando se suelte. Recoja cada perla.',
  'take-out-media/text-large':
    'Aspire o arrastre el lecho con agua donde está. No vuelque el tanque. Saque el tubo cuando se suelte. Recoja cada perla.',
  'take-out-media/brief': 'Dos personas lo vuelcan sobre una lona, o se aspira. Tubo afuera cuando se suelte. Recoja cada perla.',
  'take-out-media/brief-unknown':
    'Hasta 12 in (30 cm) y 150 lb (68 kg) vaciado, dos lo vuelcan; mayor: aspire. Tubo afuera cuando se suelte. Cada perla.',
  'take-out-media/brief-large': 'Aspire o arrastre con agua donde está. Tubo afuera cuando se suelte. Recoja cada perla.',
  'inspect-tank': 'Enjuague e inspeccione el tanque',
  'inspect-tank/text': 'Enjuague el tanque. Con una lámpara mire el interior, la rosca del cuello, el hueco del fondo y la base.',
  'inspect-tank/brief': 'Mire con lámpara: interior, rosca del cuello, hueco del fondo, base.',
  'cut-tube': 'Corte el tubo nuevo',
  'cut-tube/text':
    'Ponga el tubo nuevo junto al viejo, canastilla con canastilla. Si el viejo ajustaba y las canastillas son iguales, córtelo al mismo largo ({cutLength}). Si no, párelo en el hueco del fondo y márquelo al ras del borde; algunas válvulas piden una diferencia. Corte a escuadra y quite la rebaba.',
  'cut-tube/text-hub':
    'Ponga el cubo nuevo en el hueco del fondo y enrosque los laterales a mano, parejos y enteros. Corte el tubo al largo del viejo ({cutLength}), a escuadra y sin rebaba. Manda la tarjeta del fabricante.',
  'cut-tube/brief':
    'Como el tubo viejo, canastilla con canastilla, si ajustaba y son iguales ({cutLength}); si no, al ras del borde o según la válvula. A escuadra, sin rebaba.',
  'cut-tube/brief-hub':
    'Cubo nuevo, laterales a mano, parejos y enteros. Tubo como el viejo ({cutLength}), a escuadra, sin rebaba; manda la tarjeta.',
  'cut-tube/length': 'el material dice {length}',
  'cut-tube/length-unknown': 'el material no da largo: decide el tubo viejo',
  'cap-tube': 'Centre el tubo y tápelo',
  'cap-tube/text':
    'Pare el tubo en el hueco del fondo, derecho, en el centro del cuello. Ponga la tapa. Entra una tapa: cuéntela al sacarla.',
  'cap-tube/brief': 'En el hueco del fondo, derecho, en el centro. Tapa puesta: entra una.',
  'water-first': 'Ponga agua en el tanque',
  'water-first/text':
    'Llene cerca de un tercio del tanque con agua antes de verter nada. Amortigua lo que vierte y mantiene el tubo en su lugar.',
  'water-first/brief': 'Un tercio lleno, antes de verter nada.',
  'pour-gravel': 'Vierta la grava',
  'pour-gravel/text': 'Vierta {gravel} alrededor del tubo, primero la gruesa y luego la fina. Nivele. Sostenga el tubo en el centro.',
  'pour-gravel/text-unknown':
    'Si este tanque lleva grava, viértala ahora alrededor del tubo, primero la gruesa y luego la fina ({gravel}). Nivele.',
  'pour-gravel/brief': '{gravel}, primero la gruesa y luego la fina. Nivele.',
  'pour-gravel/brief-unknown': 'Si el tanque la lleva: {gravel}, primero la gruesa y luego la fina. Nivele.',
  'pour-gravel/amount': '{weight} de grava',
  'pour-gravel/amount-unknown': 'la grava del material',
  'pour-resin': 'Vierta la resina',
  'pour-resin/text':
    'Con el embudo en el cuello, vierta {resin}. El tanque queda lleno a unos dos tercios. Sostenga el tubo abajo y en el centro todo el tiempo.',
  'pour-resin/brief': '{resin} por el embudo, hasta unos dos tercios. Sostenga el tubo abajo.',
  'pour-resin/amount': '{volume} de resina',
  'pour-resin/amount-assumed': 'la resina del material (se suponen {volume})',
  'cap-out': 'Saque la tapa y cuéntela',
  'cap-out/text': 'Enjuague las perlas del cuello y de la punta del tubo. Saque la tapa, téngala en la mano, cuéntela.',
  'cap-out/brief': 'Enjuague las perlas del cuello. Tapa en la mano: entró una, salió una.',
  'seat-valve': 'Sellos nuevos, asiente la válvula',
  'seat-valve/text':
    'Con la válvula afuera, mire inyector, malla, pistón, sellos y espaciadores. Ponga sellos nuevos, solo grasa de silicona. Llene el tanque de agua. Ponga la válvula sobre el tubo y enrosque a mano hasta que asiente el O-ring; luego ¼ a ½ vuelta más como máximo, o lo que diga el fabricante si se sabe.',
  'seat-valve/brief':
    'Mire inyector, malla, pistón, sellos. Sellos nuevos, solo grasa de silicona. Llene de agua. Enrosque a mano hasta que asiente el O-ring, luego ¼ a ½ vuelta como máximo, o lo que diga el fabricante.',
  reconnect: 'Reconecte las líneas',
  'reconnect/text':
    'Conecte agua, salmuera y drenaje. Fije la línea de drenaje sin doblez. Revise el espacio de aire en el drenaje: al menos dos veces el diámetro interior de la línea de drenaje, y al menos 1 in (25 mm). Quite los aireadores de las llaves más cercanas al ablandador.',
  'reconnect/brief':
    'Agua, salmuera, drenaje. Espacio de aire: dos veces el diámetro del drenaje, al menos 1 in (25 mm). Aireadores fuera.',
  'start-in-backwash': 'Arranque despacio, en retrolavado',
  'start-in-backwash/text':
    'Ponga un colador en el primer flujo del drenaje. Dé corriente a la válvula, inicie una regeneración manual y deténgala en retrolavado. Luego abra el agua poco a poco, para que el aire atrapado salga por el drenaje.',
  'start-in-backwash/brief':
    'Colador en el drenaje. Corriente, regeneración manual, pare en retrolavado. Agua poco a poco: el aire sale por el drenaje.',
  'run-clear': 'Deje correr hasta que salga clara',
  'run-clear/text': 'Deje correr el retrolavado algunos minutos, hasta que el drenaje salga claro y sin perlas.',
  'run-clear/brief': 'Algunos minutos, hasta que salga claro y sin perlas.',
  'leaks-first': 'Busque fugas con presión',
  'leaks-first/text': 'Mire el cuello, el bypass, la línea de salmuera y cada unión que abrió.',
  'leaks-first/brief': 'Cuello, bypass, línea de salmuera, cada unión que abrió.',
  sanitise: 'Desinfecte',
  'sanitise/text':
    'Vierta {bleach} en el pozo de salmuera. Nada si se usó limpiador de hierro y no se enjuagó. Abra una ventana o una puerta.',
  'sanitise/brief': '{bleach} en el pozo de salmuera. Nada si se usó limpiador de hierro. Aire fresco.',
  'check-brine': 'Revise succión y rellenado',
  'check-brine/text':
    'Lleve la válvula a salmuera: el nivel en el pozo de salmuera debe bajar. Llévela a rellenado: en una válvula por tiempo la para el tiempo, debajo del flotador. El flotador es la seguridad: si para cada rellenado, está muy bajo o el tiempo es muy largo. Lleve el rebosadero a un drenaje.',
  'check-brine/brief':
    'Salmuera: baja el nivel del pozo. Rellenado: el de tiempo para por tiempo, flotador más arriba. Rebosadero a un drenaje.',
  'full-regeneration': 'Haga una regeneración completa',
  'full-regeneration/text':
    'Inicie una regeneración completa. Avise a la familia: nada de agua caliente hasta que termine. Quédese si el tiempo alcanza, o diga cuándo termina. Durante y después del enjuague compare la conductividad o use una tira de cloruro: solo eso muestra la salmuera.',
  'full-regeneration/brief':
    'Nada de agua caliente hasta que termine. Quédese, o diga cuándo termina. La conductividad o una tira de cloruro muestra la salmuera.',
  'test-outlet': 'Mida a la salida de la válvula',
  'test-outlet/text':
    'Ponga la válvula en servicio y deje correr una llave fría dos minutos. Mida a la salida de la válvula, no en una llave caliente, y antes de que empiece la regeneración: la mayoría de las válvulas deja pasar agua cruda mientras regenera. Menos de {limit} muestra que pasa poca agua cruda. No muestra que la salmuera funcione: la resina nueva viene en forma de sodio.',
  'test-outlet/text-after':
    'Cuando la regeneración haya terminado, nunca durante: la mayoría de las válvulas deja pasar agua cruda. Mida a la salida de la válvula, no en una llave caliente. Debe dar menos de {limit}.',
  'test-outlet/brief':
    'En servicio, antes de la regeneración, no en una llave caliente. Con menos de {limit} pasa poca agua cruda; no muestra la salmuera.',
  'hand-over': 'Ajuste, abra y entregue',
  'hand-over/text':
    'Quite el puente. Cuando termine la regeneración: enjuague primero las llaves frías, luego abra la entrada del calentador, enciéndalo y enjuague las calientes. Aireadores, ajustes, en servicio. Enseñe a la familia a usar el bypass.',
  'hand-over/text-short': 'Ablandador en servicio, sin fugas, hora correcta, sal completa. Cuente a la familia lo que encontró.',
  'hand-over/brief':
    'Puente fuera. Después de la regeneración: llaves frías, luego entrada del calentador y encenderlo, calientes. Aireadores, ajustes, en servicio. Enseñe el bypass.',
  'hand-over-short': 'Déjelo funcionando',
  'clear-away': 'Llévese el lecho viejo',
  'clear-away/text':
    'Cierre los baldes y llévese la resina usada. Su empresa genera el residuo y decide si es peligroso: siga la norma local.',
  'clear-away/text-well':
    'Cierre los baldes y llévese la resina usada. Si es de un pozo puede tener metales o radio: la norma local decide a dónde va.',
  'clear-away-empty': 'Deje limpio el piso',
  'clear-away/text-empty': 'Recoja las perlas derramadas y llévese las bolsas vacías. El lecho viejo se retiró en la visita anterior.',
  'clear-away/brief-empty': 'Perlas recogidas, bolsas vacías retiradas. El lecho viejo se retiró antes.',
  'clear-away/brief': 'Baldes cerrados. A dónde va la resina usada es norma local.',
  'clear-away/brief-well': 'Baldes cerrados. De un pozo puede tener metales o radio: norma local.',
  'of-tank': '{title}: {tank}',
  'test-water': 'Pruebe el agua',
  'test-water/text': 'Mida la dureza antes del ablandador y a la salida de la válvula, no en una llave caliente.',
  'check-brine-tank': 'Mire la sal y la salmuera',
  'check-brine-tank/text':
    'Busque un puente de sal, lodo y el nivel del agua. Limpie el pozo de salmuera si está sucio. El rebosadero debe ir a un drenaje.',
  'check-settings': 'Revise los ajustes',
  'check-settings/text': 'Compare dureza, hora y ajuste de sal con el registro y con el agua que acaba de probar.',
  'check-regeneration': 'Recorra una regeneración',
  'check-regeneration/text': 'Inicie una regeneración manual: el retrolavado sale claro, succiona salmuera, el rellenado para en su nivel.',
  'look-at-beads': 'Mire las perlas',
  'look-at-beads/text':
    'Si la válvula sale con facilidad, tome una cucharada de la parte de arriba del lecho: firmes o blandas, enteras o rotas, color. Mida del borde hasta el lecho.',
  'clean-bed': 'Limpie el lecho',
  'clean-bed/text':
    'Deje el ablandador en servicio y cierre la casa detrás de él, o mantenga cerradas todas las llaves: en bypass nada succiona ni enjuaga el limpiador. Use uno hecho para resina de ablandador con hierro, con la dosis y el tiempo del fabricante. Enjuague hasta que el drenaje salga claro; luego haga una regeneración completa.',
  repair: 'Encuentre y arregle la falla',
  'repair/text': 'Encuentre la falla, cambie la pieza, anote qué estaba mal.',
  'what-happened': '¿Qué pasó?',
  'what-happened/text': 'Pregunte y mire antes de tocar nada. Si sale agua, cierre primero la llave principal.',
  'stop-beads': 'Detenga las perlas',
  'stop-beads/text':
    'Ablandador en bypass. Cierre el agua caliente. Aparatos apagados. Luego enjuague desde la entrada principal, llave por llave, sin aireadores. Limpie las mallas, el calentador y la máquina de hielo.',
  'stop-water': 'Detenga el agua',
  'stop-water/text':
    'Ponga el ablandador en bypass; si no basta, cierre la llave principal. Quite la presión. Busque de dónde salió el agua. Luego dé agua a la casa por el bypass.',
  'find-water': 'Dé agua a la casa',
  'find-water/text':
    'Ponga el ablandador en bypass y abra una llave fría. Si sale agua, la detiene el ablandador: una válvula trabada entre posiciones, un lecho tapado, una tapa que quedó en el tubo. Si no sale, mire la llave principal y pregunte a los vecinos.',
  'leave-safe': 'Déjelo seguro',
  'leave-safe/text':
    'Ablandador en servicio solo si nada fuga y no salen perlas. Si no, queda en bypass. Cuente a la familia lo que encontró y qué sigue.',
  'set-tank': 'Coloque el ablandador nuevo',
  'set-tank/text':
    'Piso parejo, drenaje y corriente al alcance, espacio para sacar el tubo. Llene el tanque donde queda: tubo en el hueco del fondo, tapa puesta, agua, grava, resina. Si viene lleno: mire dentro de su tubo.',
  'set-tank-exchange': 'Ponga el otro tanque en su lugar',
  'set-tank/text-exchange':
    'Tape o embolse la boca del tanque viejo y sáquelo como está. Ponga el otro nivelado en su lugar y mire dentro de su tubo. Compare su tamaño y su resina con lo que dice el trabajo.',
  work: 'Haga el trabajo',
  'work/text': 'Haga lo que dice el trabajo. Anote qué hizo y qué encontró.',
  'procedure/rebed': 'Cambio de lecho',
  'procedure/annual-visit': 'Visita anual',
  'procedure/cleaning': 'Limpieza',
  'procedure/inspection': 'Inspección',
  'procedure/repair': 'Reparación',
  'procedure/emergency': 'Emergencia',
  'procedure/installation': 'Instalación',
  'procedure/exchange': 'Cambio de tanque',
  'procedure/delivery': 'Entrega',
  'assumed/times': '{reason} Los tiempos son para {volume}.',
  'assumed/bypass': 'No está registrado si hay bypass: los pasos cuentan con uno.',
  'assumed/pipe': 'El material de la tubería no está registrado: el puente de unión se mantiene.',
  'assumed/power': 'No está registrado si la válvula usa corriente: los pasos cuentan con que sí.',
  'assumed/pressure': 'La presión no está registrada: los pasos la preguntan.',
}
