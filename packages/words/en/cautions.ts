/**
 * What can hurt people or the house, before the step it belongs to: hazard, consequence, how to avoid it, in the order of ANSI Z535.6 (from memory).
 * Common practice, no source, except where packages/softener names one.
 */
export const cautions = {
  'stop-cases':
    'Stop and refer at a lead line, asbestos, a crawl space, a boil-water notice, a cracked tank, or work that needs a permit or license.',
  'way-out': 'Old resin is heavy. Plan the way out first: stairs and tight corners need a second person or smaller loads.',
  'pressure-high':
    'Pressure is above 80 psi (5.5 bar): it needs a regulator, and expansion control if the system is closed. Tell the customer before you go on.',
  'pressure-read': 'Read the pressure. Above 80 psi (5.5 bar) it needs a regulator, and expansion control if the system is closed.',
  'hot-back': 'Hot water can run back when the pressure goes. Close the heater before you move the bypass.',
  'heater-shut': 'A heater that fires with its inlet shut builds up pressure and can burst. Off first; watch its relief valve.',
  'bypass-leaks':
    'A leaking bypass floods the room once the valve is off. If it doesn’t hold, close the main, and repair or replace it first.',
  'twin-pressure':
    'The other tank stays under full pressure, and its lines can fill this one. Close and mark every line between them first.',
  'twin-lines': 'Lines crossed between twin tanks send brine to the house. Mark each line and its tank before you take it off.',
  'twin-changeover': 'A head that stays on one tank runs it hard. Change over to this tank and back before you leave.',
  'twin-even':
    'Parallel tanks share the flow only if they are alike: same resin and fill. One unlike the other is used up first. Set them to regenerate at different hours.',
  'water-off': 'Tell the household that the water is off, and for how long.',
  'water-hard': 'Tell the household: a short stop now, then hard water until you finish.',
  'full-pressure':
    'Full house pressure: a loosened valve can fly off. Wait until the drain has run and stopped. Don’t unplug the valve yet.',
  'full-pressure-short':
    'Full house pressure: a loosened valve can fly off. Wait until the drain has run and stopped; keep the valve plugged in until then.',
  plug: 'Wet plugs shock. Pull it with dry hands, and lay it where no water reaches it.',
  ground: 'Metal pipe may be the house ground; opening it can shock. Jumper first.',
  'still-rises': 'If water still rises while you loosen the valve, stop: the pressure is not off.',
  'stuck-tube': 'Never pull a stuck tube by the valve: it breaks the basket or the neck.',
  collapse: 'A vacuum collapses a fiberglass tank. Keep it vented all the time.',
  'wet-vacuum': 'A wet vacuum can shock. Plug it only into a GFCI outlet.',
  'tip-alone': 'A full tank can crush. One person never tips it alone.',
  'tip-weight': 'Drained it weighs about {drained}, the heaviest lift of the job: two people, never one alone.',
  'tip-large': 'Over 12 in (30 cm) or 150 lb (68 kg) drained a tank crushes whoever tips it. Empty it where it stands.',
  'wet-beads': 'Wet beads on the floor are as slippery as ice. Sheet under the work, sweep at once.',
  'beads-drain': 'No beads down the drain: they plug the trap.',
  crack: 'A cracked tank can burst. It is condemned: no patching. Leave it in bypass and say what follows.',
  'tube-length': 'A tube too long cracks the valve; one too short lets beads into the house. Measure twice.',
  'clean-hands': 'Germs from hands, tools or the floor end up in the drinking water. Clean hands or new gloves; rinse the tube.',
  'bead-inside': 'A bead inside the tube ends up at the taps. Cap it before you pour.',
  'raise-gravel': 'Never raise the tube while you pour: gravel would run under it.',
  quartz: 'Quartz dust harms the lungs. Pour it wet or wear a mask.',
  'raise-resin': 'Never raise the tube while you fill: resin would run under the basket and hold it up.',
  'dry-beads': 'Dry beads swell when wet and can hurt the eyes. Wear eye protection; use resin that stayed moist.',
  'carry-tank':
    'Drained it weighs about {drained}; full of water much more. Hand truck and strap, two people on stairs. Never lift by the neck or the pipes.',
  'carry-tank-unknown':
    'A tank with its bed can weigh more than two people carry. Hand truck and strap, two people on stairs. Never lift by the neck or the pipes.',
  'lift-bag': 'Split the bag or lift it as a team.',
  'lift-bag-index':
    'A {bag} bag lifted from the floor has a lifting index of {index} (NIOSH 94-110; level dry floor, no stairs). Split it or lift it as a team.',
  'spilled-beads': 'Spilled beads are slippery. Sweep them up at once.',
  'cap-left': 'A cap left on the tube shuts off the house. Take it out before the valve goes on.',
  'neck-force': 'Too much force cracks the neck, and it fails later under pressure.',
  grease: 'No petroleum grease: it swells the seals.',
  'jumper-stays': 'Leave the bonding jumper on until the metal pipe is whole again.',
  certified: 'Parts in contact with the water must be certified for drinking water.',
  'plastic-thread':
    'A crossed or doped plastic thread cracks and floods the house. Start by hand; no tape or dope on O-ring or plastic threads.',
  solder: 'Heat melts plastic fittings. Undo them before you solder near them.',
  'air-hammer': 'Opened fast, trapped air drives the bed into the valve and hammers the pipes. Open slowly.',
  'fine-mesh-flow':
    'Fine mesh goes down the drain at the usual backwash. Fit the smaller drain flow control first, about half the usual flow.',
  'dry-hands': 'Dry hands and a dry plug before the power goes on.',
  'drain-flow': 'The standpipe, sump or septic system must take the backwash flow. Watch it.',
  septic: 'A septic system takes this flow badly. Ask where it may go.',
  'tighten-pressure': 'Never tighten the valve on the tank while it is under pressure.',
  'bleach-cleaner': 'Never mix bleach with iron cleaner: it makes toxic gas. No bleach if a cleaner was used or is in the brine tank.',
  'eyes-gloves': 'Bleach burns eyes and skin, and its fumes fill a closed room. Eye protection, gloves, fresh air.',
  taste: 'Don’t judge by taste.',
  'no-hot-yet': 'Hot water drawn during a regeneration fills the heater with raw water. No hot tap until it has ended.',
  sodium: 'Softened water carries sodium: people on a sodium diet should ask their doctor, or keep one tap unsoftened.',
  pails: 'Pails are heavy. Carry them one at a time, with a second person on stairs.',
  'cleaner-gas': 'Never mix bleach with iron cleaner: toxic gas. Fresh air, eye protection, gloves.',
  'cleaner-drink': 'Cleaner is harmful to drink. Keep taps shut until it is rinsed clear.',
  'standing-water': 'Water on the floor near a socket or plug can kill. Stay out of it until the power is off at the breaker.',
  scald: 'A water heater scalds. Turn it down and run hot water until it is cool before you drain it.',
  'dry-firing':
    'A heater that is on while it is empty burns out. Power off at the breaker, gas to pilot, before you drain it. Watch its relief valve.',
  'beads-emergency': 'Beads at the taps are an emergency the same day. Bypass first, then everything else.',
} as const
