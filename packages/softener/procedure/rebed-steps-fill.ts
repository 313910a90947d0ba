import { caution, confirm, number, type StepRule } from './step-rules.ts'

/** From the empty tank to the valve back in its seat. */
export const STEPS_FILL: readonly StepRule[] = [
  {
    id: 'cut-tube',
    title: 'Cut the new tube',
    text: ({ cutLength }) =>
      `Lay the new tube beside the old one, basket to basket, and cut it to the same length if the old one fitted and the baskets match (${cutLength}). Otherwise stand it in the dimple and mark it flush with the rim; some valves want an offset. Cut square, deburr.`,
    minutes: 3,
    cautions: [caution('water', 'A tube too long cracks the valve, one too short lets beads into the house: measure twice.')],
    asks: [number('new-tube-length-in', 'Length of the new tube with its basket', 'tube', true)],
  },
  {
    id: 'cap-tube',
    title: 'Centre the tube and cap it',
    text: 'Stand the tube in the dimple, upright in the middle of the neck. Put the cap on. One cap goes in: it must be counted out again.',
    minutes: 2,
    cautions: [caution('water', 'A bead inside the tube ends up at the taps.')],
    asks: [confirm('cap-on', 'Tube centred, cap on (one cap counted in)')],
  },
  {
    id: 'water-first',
    title: 'Put water in the tank',
    text: 'Fill the tank about a third with water before anything is poured in: it softens the fall and keeps the tube in its place.',
    minutes: 2,
  },
  {
    id: 'pour-gravel',
    title: 'Pour the gravel',
    text: ({ gravelText, gravel }) =>
      gravel === null
        ? `If this tank is to have gravel, pour it now around the tube, coarse before fine (${gravelText}). Level it.`
        : `Pour ${gravelText} around the tube, coarse before fine. Level it. Hold the tube in the middle.`,
    minutes: ({ commercial }) => (commercial ? 30 : 3),
    when: ({ gravel }) => gravel !== false,
    cautions: [
      caution('water', 'Never raise the tube while pouring: gravel would run under it.'),
      caution('chemical', 'Quartz dust harms the lungs: pour it wetted or wear a mask.'),
    ],
    asks: [number('gravel-lb', 'Gravel put in', 'gravel')],
  },
  {
    id: 'pour-resin',
    title: 'Pour the resin',
    text: ({ resinText }) =>
      `With the funnel on the neck pour in ${resinText}. The tank is then about two thirds full. Hold the tube down in the middle all the time.`,
    minutes: ({ resinFt3, commercial }) => (commercial ? 20 + 6 * resinFt3 : 5 + 4 * resinFt3),
    cautions: [
      caution('water', 'The tube is never raised while filling: resin would run under the basket and hold it up.'),
      caution('chemical', 'Wear eye protection. Dry beads swell when wetted: use resin that has stayed moist.'),
      caution('lifting', 'Split the bag or lift it as a team.'),
      caution('slip', 'Sweep up spilt beads at once.'),
    ],
    asks: [number('resin-ft3', 'Resin put in', 'resin', true)],
  },
  {
    id: 'cap-out',
    title: 'Take the cap out and count it',
    text: 'Rinse beads off the neck and the top of the tube. Take the cap out, hold it in your hand, count it.',
    minutes: 2,
    cautions: [caution('water', 'A cap left on the tube shuts off the house and must not be found by the customer.')],
    asks: [confirm('cap-out', 'Cap taken out and counted (one in, one out)')],
  },
  {
    id: 'seat-valve',
    title: 'Renew the seals and seat the valve',
    text: 'New seals, silicone grease only. Fill the tank with water. Set the valve over the tube, screw it to its seat by hand, then at most about a quarter to half a turn, or by the maker’s figure where known.',
    minutes: 6,
    cautions: [
      caution('pressure', 'Too much force cracks the neck, and it fails later under pressure.'),
      caution('chemical', 'No petroleum grease: it swells the seals.'),
    ],
    asks: [confirm('seals-renewed', 'Seals renewed, silicone grease only')],
  },
  {
    id: 'reconnect',
    title: 'Reconnect the lines',
    text: 'Connect water, brine and drain. Check the air gap at the drain: at least twice the bore of the drain line, and at least 1 in (25 mm). Take the aerators off the taps nearest the softener.',
    minutes: 6,
    cautions: [
      caution('electricity', 'Leave the bonding jumper on until the metal pipe is whole again.', ({ metalPipe }) => metalPipe !== false),
      caution('water', 'Parts in contact with the water must be certified for drinking water.'),
    ],
    asks: [confirm('air-gap', 'Air gap at the drain is large enough'), confirm('aerators-off', 'Aerators off', false)],
  },
]
