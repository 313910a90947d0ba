import type { cautions as english } from '../en/cautions.ts'
import type { Translation } from '../translation.ts'

/** Compared sentence by sentence with the English: the same hazard, the same consequence, the same way out. Not yet read by a native technician. */
export const cautions: Translation<typeof english> = {
  'stop-cases':
    'Pare y derive si hay una línea de plomo, asbesto, un espacio angosto bajo el piso, un aviso de hervir el agua, un tanque agrietado o un trabajo que pide permiso o licencia.',
  'way-out': 'La resina vieja pesa. Planee antes la salida: escaleras y esquinas angostas piden una segunda persona o cargas menores.',
  'pressure-high':
    'La presión pasa de 80 psi (5.5 bar): hace falta un regulador, y control de expansión si el sistema es cerrado. Avise al cliente antes de seguir.',
  'pressure-read': 'Lea la presión. Arriba de 80 psi (5.5 bar) hace falta un regulador, y control de expansión si el sistema es cerrado.',
  'hot-back': 'El agua caliente puede regresar cuando baja la presión. Cierre el calentador antes de mover el bypass.',
  'heater-shut':
    'Un calentador encendido con la entrada cerrada acumula presión y puede reventar. Apáguelo antes; vigile su válvula de alivio.',
  'bypass-leaks':
    'Un bypass que fuga inunda el cuarto cuando se quita la válvula. Si no cierra, cierre la llave principal y primero repárelo o cámbielo.',
  'twin-pressure':
    'El otro tanque queda con toda la presión, y sus líneas pueden llenar este. Antes cierre y marque cada línea entre ellos.',
  'twin-lines': 'Las líneas cruzadas entre tanques gemelos mandan salmuera a la casa. Marque cada línea y su tanque antes de quitarla.',
  'twin-changeover': 'Un cabezal que se queda en un tanque lo agota. Cambie a este tanque y de vuelta antes de irse.',
  'twin-even':
    'Los tanques en paralelo reparten el flujo solo si son iguales: misma resina y llenado. Uno distinto se agota primero. Ajústelos para regenerar a horas distintas.',
  'water-off': 'Avise a la familia que el agua está cortada, y por cuánto tiempo.',
  'water-hard': 'Avise a la familia: un corte breve ahora, luego agua dura hasta que termine.',
  'full-pressure':
    'Presión completa de la casa: una válvula floja puede salir disparada. Espere a que el drenaje corra y se detenga. No desenchufe la válvula todavía.',
  'full-pressure-short':
    'Presión completa de la casa: una válvula floja puede salir disparada. Espere a que el drenaje corra y se detenga; hasta entonces deje la válvula enchufada.',
  plug: 'Un enchufe mojado da descarga. Tire de él con las manos secas y póngalo donde no llegue el agua.',
  ground: 'La tubería de metal puede ser la tierra de la casa; abrirla puede dar descarga. Primero el puente de unión.',
  'still-rises': 'Si al aflojar la válvula sigue subiendo agua, pare: aún hay presión.',
  'stuck-tube': 'Nunca tire de un tubo trabado con la válvula: rompe la canastilla o el cuello.',
  collapse: 'El vacío aplasta un tanque de fibra de vidrio. Déjele entrada de aire todo el tiempo.',
  'wet-vacuum': 'Una aspiradora de agua puede dar descarga. Enchúfela solo en un tomacorriente GFCI.',
  'tip-alone': 'Un tanque lleno puede aplastar. Una persona sola nunca lo vuelca.',
  'tip-weight': 'Vaciado pesa unas {drained}, lo más pesado del trabajo: dos personas, nunca una sola.',
  'tip-large': 'Con más de 12 in (30 cm) o 150 lb (68 kg) vaciado, un tanque aplasta a quien lo vuelca. Vacíelo donde está.',
  'wet-beads': 'Las perlas mojadas en el piso resbalan como hielo. Lona debajo del trabajo, barra de inmediato.',
  'beads-drain': 'Ninguna perla al drenaje: tapan el sifón.',
  crack: 'Un tanque agrietado puede reventar. No es apto: no se parcha. Déjelo en bypass y diga qué sigue.',
  'tube-length': 'Un tubo demasiado largo agrieta la válvula; uno demasiado corto deja pasar perlas a la casa. Mida dos veces.',
  'clean-hands': 'Los gérmenes de manos, herramientas o piso llegan al agua de beber. Manos limpias o guantes nuevos; enjuague el tubo.',
  'bead-inside': 'Una perla dentro del tubo termina en las llaves. Tápelo antes de verter.',
  'raise-gravel': 'Nunca suba el tubo mientras vierte: la grava se metería debajo.',
  quartz: 'El polvo de cuarzo daña los pulmones. Viértalo mojado o use mascarilla.',
  'raise-resin': 'Nunca suba el tubo mientras llena: la resina se metería debajo de la canastilla y lo dejaría arriba.',
  'dry-beads':
    'Las perlas secas se hinchan al mojarse y pueden lastimar los ojos. Use protección para los ojos y resina que se mantuvo húmeda.',
  'carry-tank':
    'Vaciado pesa unas {drained}; lleno de agua, mucho más. Carretilla y correa, dos personas en escaleras. Nunca lo levante por la boca ni por los tubos.',
  'carry-tank-unknown':
    'Un tanque con su lecho puede pesar más de lo que cargan dos personas. Carretilla y correa, dos personas en escaleras. Nunca lo levante por la boca ni por los tubos.',
  'lift-bag': 'Divida la bolsa o levántela en equipo.',
  'lift-bag-index':
    'Una bolsa de {bag} levantada del piso tiene un índice de levantamiento de {index} (NIOSH 94-110; piso parejo y seco, sin escaleras). Divídala o levántela en equipo.',
  'spilled-beads': 'Las perlas derramadas resbalan. Bárralas de inmediato.',
  'cap-left': 'Una tapa que queda en el tubo corta el agua de la casa. Sáquela antes de poner la válvula.',
  'neck-force': 'Demasiada fuerza agrieta el cuello, y falla después con presión.',
  grease: 'Nada de grasa de petróleo: hincha los sellos.',
  'jumper-stays': 'Deje el puente de unión hasta que la tubería de metal esté entera otra vez.',
  certified: 'Las piezas en contacto con el agua deben estar certificadas para agua potable.',
  'plastic-thread':
    'Una rosca de plástico cruzada o con sellador se agrieta e inunda la casa. Empiece a mano; nada de cinta ni sellador en roscas de O-ring o de plástico.',
  solder: 'El calor funde las conexiones de plástico. Suéltelas antes de soldar cerca.',
  'air-hammer': 'Si se abre de golpe, el aire atrapado empuja el lecho contra la válvula y golpea la tubería. Abra despacio.',
  'fine-mesh-flow':
    'La malla fina se va por el drenaje con el retrolavado usual. Ponga antes el control de flujo menor, cerca de la mitad del flujo usual.',
  'dry-hands': 'Manos secas y enchufe seco antes de dar corriente.',
  'drain-flow': 'El tubo de desagüe, el sumidero o la fosa séptica debe admitir el flujo del retrolavado. Vigílelo.',
  septic: 'Una fosa séptica recibe mal este flujo. Pregunte a dónde puede ir.',
  'tighten-pressure': 'Nunca apriete la válvula sobre el tanque mientras tiene presión.',
  'bleach-cleaner':
    'Nunca mezcle hipoclorito de sodio con limpiador de hierro: produce gas tóxico. Nada de hipoclorito si se usó un limpiador o queda en el tanque de salmuera.',
  'eyes-gloves':
    'El hipoclorito quema los ojos y la piel, y sus vapores llenan un cuarto cerrado. Protección para los ojos, guantes, aire fresco.',
  taste: 'No juzgue por el sabor.',
  'no-hot-yet':
    'El agua caliente usada durante una regeneración llena el calentador de agua cruda. Ninguna llave caliente hasta que termine.',
  sodium: 'El agua ablandada lleva sodio: quien sigue una dieta baja en sodio debe preguntar a su médico, o dejar una llave sin ablandar.',
  pails: 'Los baldes pesan. Llévelos de uno en uno, con una segunda persona en las escaleras.',
  'cleaner-gas': 'Nunca mezcle hipoclorito de sodio con limpiador de hierro: gas tóxico. Aire fresco, protección para los ojos, guantes.',
  'cleaner-drink': 'El limpiador hace daño si se bebe. Llaves cerradas hasta que el enjuague salga claro.',
  'standing-water':
    'Agua en el piso junto a un tomacorriente o enchufe puede matar. No entre en ella hasta que se corte la corriente en el interruptor.',
  scald: 'Un calentador de agua quema. Bájelo y deje correr agua caliente hasta que enfríe antes de vaciarlo.',
  'dry-firing':
    'Un calentador encendido y vacío se quema. Corriente cortada en el interruptor, gas en piloto, antes de vaciarlo. Vigile su válvula de alivio.',
  'beads-emergency': 'Perlas en las llaves son una emergencia del mismo día. Primero el bypass, luego todo lo demás.',
}
