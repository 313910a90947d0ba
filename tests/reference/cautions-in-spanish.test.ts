import { en } from '@almanac/words/en/all'
import { cautions as english } from '@almanac/words/en/cautions'
import { es } from '@almanac/words/es/all'
import { cautions as spanish } from '@almanac/words/es/cautions'
import { describe, expect, it } from 'vitest'

/**
 * The cautions read side by side, word by word, by somebody who reads both languages but is no technician of Spanish mother tongue: of each the hazard and the way
 * out, in both. A caution that is worded anew in one language turns red here until it has been compared again.
 */
const COMPARED: Record<keyof typeof english, readonly (readonly [english: string, spanish: string])[]> = {
  'stop-cases': [
    ['Stop and refer', 'Pare y derive'],
    ['lead line', 'línea de plomo'],
    ['asbestos', 'asbesto'],
    ['crawl space', 'espacio angosto bajo el piso'],
    ['boil-water notice', 'aviso de hervir el agua'],
    ['cracked tank', 'tanque agrietado'],
    ['permit or license', 'permiso o licencia'],
  ],
  'way-out': [
    ['is heavy', 'pesa'],
    ['a second person or smaller loads', 'una segunda persona o cargas menores'],
  ],
  'pressure-high': [
    ['above 80 psi (5.5 bar)', 'pasa de 80 psi (5.5 bar)'],
    ['a regulator', 'un regulador'],
    ['expansion control if the system is closed', 'control de expansión si el sistema es cerrado'],
    ['before you go on', 'antes de seguir'],
  ],
  'pressure-read': [
    ['Read the pressure', 'Lea la presión'],
    ['Above 80 psi (5.5 bar)', 'Arriba de 80 psi (5.5 bar)'],
  ],
  'hot-back': [
    ['Close the heater before', 'Cierre el calentador antes'],
    ['bypass', 'bypass'],
  ],
  'bypass-leaks': [
    ['floods the room', 'inunda el cuarto'],
    ['close the main', 'cierre la llave principal'],
    ['repair or replace it first', 'primero repárelo o cámbielo'],
  ],
  'water-off': [
    ['water is off', 'agua está cortada'],
    ['how long', 'cuánto tiempo'],
  ],
  'full-pressure': [
    ['can fly off', 'puede salir disparada'],
    ['has run and stopped', 'corra y se detenga'],
    ['Don’t unplug the valve yet', 'No desenchufe la válvula todavía'],
  ],
  'full-pressure-short': [
    ['can fly off', 'puede salir disparada'],
    ['has run and stopped', 'corra y se detenga'],
    ['plugged in until then', 'hasta entonces deje la válvula enchufada'],
  ],
  plug: [
    ['shock', 'descarga'],
    ['dry hands', 'manos secas'],
    ['no water reaches it', 'no llegue el agua'],
  ],
  ground: [
    ['house ground', 'tierra de la casa'],
    ['shock', 'descarga'],
    ['Jumper first', 'Primero el puente de unión'],
  ],
  'still-rises': [
    ['stop', 'pare'],
    ['the pressure is not off', 'aún hay presión'],
  ],
  'stuck-tube': [
    ['Never pull', 'Nunca tire'],
    ['breaks the basket or the neck', 'rompe la canastilla o el cuello'],
  ],
  collapse: [
    ['collapses', 'aplasta'],
    ['fiberglass', 'fibra de vidrio'],
    ['vented all the time', 'entrada de aire todo el tiempo'],
  ],
  'wet-vacuum': [
    ['shock', 'descarga'],
    ['only into a GFCI outlet', 'solo en un tomacorriente GFCI'],
  ],
  'tip-alone': [
    ['crush', 'aplastar'],
    ['One person never tips it', 'Una persona sola nunca lo vuelca'],
  ],
  'tip-large': [
    ['Over 12 in (30 cm) or 150 lb (68 kg) drained', 'más de 12 in (30 cm) o 150 lb (68 kg) vaciado'],
    ['crushes', 'aplasta'],
    ['Empty it where it stands', 'Vacíelo donde está'],
  ],
  'wet-beads': [
    ['slippery as ice', 'resbalan como hielo'],
    ['sweep at once', 'barra de inmediato'],
  ],
  'beads-drain': [
    ['No beads down the drain', 'Ninguna perla al drenaje'],
    ['plug the trap', 'tapan el sifón'],
  ],
  crack: [
    ['can burst', 'puede reventar'],
    ['condemned', 'No es apto'],
    ['no patching', 'no se parcha'],
    ['in bypass', 'en bypass'],
  ],
  'tube-length': [
    ['too long cracks the valve', 'demasiado largo agrieta la válvula'],
    ['too short lets beads into the house', 'demasiado corto deja pasar perlas a la casa'],
    ['Measure twice', 'Mida dos veces'],
  ],
  'bead-inside': [
    ['at the taps', 'en las llaves'],
    ['Cap it before you pour', 'Tápelo antes de verter'],
  ],
  'raise-gravel': [
    ['Never raise the tube', 'Nunca suba el tubo'],
    ['under it', 'debajo'],
  ],
  quartz: [
    ['harms the lungs', 'daña los pulmones'],
    ['wet or wear a mask', 'mojado o use mascarilla'],
  ],
  'raise-resin': [
    ['Never raise the tube', 'Nunca suba el tubo'],
    ['under the basket', 'debajo de la canastilla'],
  ],
  'dry-beads': [
    ['swell', 'hinchan'],
    ['hurt the eyes', 'lastimar los ojos'],
    ['eye protection', 'protección para los ojos'],
    ['stayed moist', 'se mantuvo húmeda'],
  ],
  'lift-bag': [['Split the bag or lift it as a team', 'Divida la bolsa o levántela en equipo']],
  'lift-bag-index': [
    ['lifting index of {index} (NIOSH 94-110', 'índice de levantamiento de {index} (NIOSH 94-110'],
    ['level dry floor, no stairs', 'piso parejo y seco, sin escaleras'],
  ],
  'spilled-beads': [
    ['slippery', 'resbalan'],
    ['at once', 'de inmediato'],
  ],
  'cap-left': [
    ['shuts off the house', 'corta el agua de la casa'],
    ['Take it out before the valve goes on', 'Sáquela antes de poner la válvula'],
  ],
  'neck-force': [
    ['cracks the neck', 'agrieta el cuello'],
    ['fails later under pressure', 'falla después con presión'],
  ],
  grease: [
    ['No petroleum grease', 'Nada de grasa de petróleo'],
    ['swells the seals', 'hincha los sellos'],
  ],
  'jumper-stays': [['Leave the bonding jumper on until', 'Deje el puente de unión hasta']],
  certified: [['certified for drinking water', 'certificadas para agua potable']],
  'air-hammer': [
    ['trapped air drives the bed into the valve', 'aire atrapado empuja el lecho contra la válvula'],
    ['Open slowly', 'Abra despacio'],
  ],
  'dry-hands': [
    ['Dry hands and a dry plug', 'Manos secas y enchufe seco'],
    ['before the power', 'antes de dar corriente'],
  ],
  'drain-flow': [
    ['must take the backwash flow', 'debe admitir el flujo del retrolavado'],
    ['Watch it', 'Vigílelo'],
  ],
  septic: [
    ['badly', 'mal'],
    ['Ask where it may go', 'Pregunte a dónde puede ir'],
  ],
  'tighten-pressure': [
    ['Never tighten', 'Nunca apriete'],
    ['under pressure', 'tiene presión'],
  ],
  'bleach-cleaner': [
    ['Never mix bleach with iron cleaner', 'Nunca mezcle hipoclorito de sodio con limpiador de hierro'],
    ['toxic gas', 'gas tóxico'],
    ['in the brine tank', 'en el tanque de salmuera'],
  ],
  'eyes-gloves': [
    ['Bleach burns eyes and skin', 'hipoclorito quema los ojos y la piel'],
    ['Eye protection, gloves, fresh air', 'Protección para los ojos, guantes, aire fresco'],
  ],
  taste: [['Don’t judge by taste', 'No juzgue por el sabor']],
  sodium: [
    ['carries sodium', 'lleva sodio'],
    ['ask their doctor', 'preguntar a su médico'],
    ['one tap unsoftened', 'una llave sin ablandar'],
  ],
  pails: [
    ['one at a time', 'de uno en uno'],
    ['a second person on stairs', 'una segunda persona en las escaleras'],
  ],
  'cleaner-gas': [
    ['Never mix bleach with iron cleaner', 'Nunca mezcle hipoclorito de sodio con limpiador de hierro'],
    ['toxic gas', 'gas tóxico'],
    ['eye protection, gloves', 'protección para los ojos, guantes'],
  ],
  'cleaner-drink': [
    ['harmful to drink', 'hace daño si se bebe'],
    ['until it is rinsed clear', 'hasta que el enjuague salga claro'],
  ],
  'standing-water': [
    ['can kill', 'puede matar'],
    ['until the power is off at the breaker', 'hasta que se corte la corriente en el interruptor'],
  ],
  scald: [
    ['scalds', 'quema'],
    ['until it is cool before you drain it', 'hasta que enfríe antes de vaciarlo'],
  ],
  'dry-firing': [
    ['on while it is empty', 'encendido y vacío'],
    ['Power off at the breaker, gas to pilot', 'Corriente cortada en el interruptor, gas en piloto'],
    ['relief valve', 'válvula de alivio'],
  ],
  'heater-shut': [
    ['builds up pressure and can burst', 'acumula presión y puede reventar'],
    ['Off first', 'Apáguelo antes'],
    ['relief valve', 'válvula de alivio'],
  ],
  'twin-pressure': [
    ['stays under full pressure', 'queda con toda la presión'],
    ['Close and mark every line between them first', 'Antes cierre y marque cada línea entre ellos'],
  ],
  'twin-lines': [
    ['send brine to the house', 'mandan salmuera a la casa'],
    ['Mark each line and its tank', 'Marque cada línea y su tanque'],
  ],
  'twin-changeover': [
    ['runs it hard', 'lo agota'],
    ['Change over to this tank and back', 'Cambie a este tanque y de vuelta'],
  ],
  'twin-even': [
    ['same resin and fill', 'misma resina y llenado'],
    ['regenerate at different hours', 'regenerar a horas distintas'],
  ],
  'water-hard': [
    ['a short stop now', 'un corte breve ahora'],
    ['hard water until you finish', 'agua dura hasta que termine'],
  ],
  'tip-weight': [
    ['the heaviest lift', 'lo más pesado'],
    ['two people, never one alone', 'dos personas, nunca una sola'],
  ],
  'carry-tank': [
    ['full of water much more', 'lleno de agua, mucho más'],
    ['Hand truck and strap, two people on stairs', 'Carretilla y correa, dos personas en escaleras'],
    ['Never lift by the neck or the pipes', 'Nunca lo levante por la boca ni por los tubos'],
  ],
  'carry-tank-unknown': [
    ['can weigh more than two people carry', 'puede pesar más de lo que cargan dos personas'],
    ['Hand truck and strap, two people on stairs', 'Carretilla y correa, dos personas en escaleras'],
    ['Never lift by the neck or the pipes', 'Nunca lo levante por la boca ni por los tubos'],
  ],
  'clean-hands': [
    ['in the drinking water', 'al agua de beber'],
    ['Clean hands or new gloves', 'Manos limpias o guantes nuevos'],
  ],
  'plastic-thread': [
    ['cracks and floods', 'se agrieta e inunda'],
    ['no tape or dope', 'nada de cinta ni sellador'],
  ],
  solder: [
    ['melts plastic fittings', 'funde las conexiones de plástico'],
    ['before you solder', 'antes de soldar'],
  ],
  'fine-mesh-flow': [
    ['goes down the drain', 'se va por el drenaje'],
    ['the smaller drain flow control first', 'antes el control de flujo menor'],
  ],
  'no-hot-yet': [
    ['fills the heater with raw water', 'llena el calentador de agua cruda'],
    ['until it has ended', 'hasta que termine'],
  ],
  'beads-emergency': [
    ['emergency the same day', 'emergencia del mismo día'],
    ['Bypass first', 'Primero el bypass'],
  ],
}

describe('each caution', () => {
  it.each(Object.entries(COMPARED))('%s: hazard and way out stand in both languages', (key, pairs) => {
    for (const [inEnglish, inSpanish] of pairs) {
      expect(english[key as keyof typeof english]).toContain(inEnglish)
      expect(spanish[key as keyof typeof spanish]).toContain(inSpanish)
    }
  })
})

/** Figures, the units behind them, and the names that both languages share. */
const figures = (message: string) =>
  (
    message
      .replace(/\{\w+, plural.*\}/g, '')
      .match(/[\d][\d.,-]*|[¼½¾⅛⅓⅔]|\b(?:psi|bar|mm|gpg|gpm|lb|ft³|in|GFCI|NIOSH|O-ring)\b|\{\w+\}/g) ?? []
  )
    .map((one) => one.replace(/[.,]$/, ''))
    // The preposition is no inch, and a bar that is pushed no pressure.
    .filter((one, i, all) => !/^(in|bar)$/.test(one) || /^[\d¼½¾⅛]/.test(all[i - 1] ?? ''))
    .sort()

it.each(['cautions', 'diagnosis', 'diagnosisCautions', 'emergency', 'whichTank', 'ownerRebed', 'steps', 'kit', 'plan', 'lacking'] as const)(
  'each figure, unit and value of %s stands in the Spanish too',
  (room) => {
    for (const [key, message] of Object.entries(en[room]))
      expect({ key, figures: figures((es[room] as Record<string, string>)[key] ?? '') }).toEqual({ key, figures: figures(message) })
  },
)
