/**
 * The steps of all procedures: `id` is a step's title, `id/text` what to do, `id/brief` the same in a line for paper; `-…` where the site decides.
 * Order and content are common practice, no source, except where packages/softener names one.
 */
export const steps = {
  'stop-and-refer': 'Safe to start?',
  'stop-and-refer/text':
    'Look around before you unload. If you find any of these, stop, make it safe and refer the job. The local plumbing code and licensed people come first.',
  'stop-and-refer/text-short': 'If you find any of these, stop and refer the job. The local plumbing code and licensed people come first.',
  'stop-and-refer/brief': 'Look around before you unload.',
  'check-water': 'Check the water first',
  'check-water/text':
    'Test hardness ahead of the softener and at the valve outlet. Compare with the last test. If the supply changed, or the softener is in bypass, new resin won’t fix it.',
  'check-water/text-new': 'Test the raw water: the new softener is set by it. Read the pressure.',
  'check-water/brief': 'Compare with the last test.',
  'record-as-found': 'Record as found',
  'record-as-found/text':
    'Take a sample at the valve outlet. Photograph the valve, piping, drain and brine tank. Write down the valve’s settings. Filters or carbon ahead: bypass them while you work, change them if due.',
  'record-as-found/brief': 'Sample at the valve outlet. Photograph it all. Note the settings. Filters ahead bypassed, changed if due.',
  'close-hot-side': 'Close the hot-water side',
  'close-hot-side/text':
    'Turn the water heater off or down: gas to pilot, electric off at the breaker. Then close its cold inlet, so nothing flows back from it.',
  'close-hot-side/brief': 'Heater off or down (gas: pilot), then close its cold inlet.',
  'prove-bypass': 'Bypass, and prove it holds',
  'prove-bypass/text':
    'Put the softener in bypass. Prove it holds: with the valve in backwash, or a tap on the softener side open, the flow must die away and stay away.',
  'prove-bypass/text-none':
    'There is no bypass. Close the stop valves before and after the softener, or the main. Open a cold tap: no water may come.',
  'prove-bypass/text-alternating':
    'This is {tank}; the other one serves the house. Switch the other into service, then close the inlet and outlet of {tank}, or bypass the whole softener where they share one head. Prove it holds: a tap on its side must die away and stay away.',
  'prove-bypass/text-parallel':
    'This is {tank}; both work at once. Close the inlet and outlet of {tank}; the other one serves the house alone, at half the flow. No valves of its own: bypass the whole softener. Prove it holds: a tap on its side must die away and stay away.',
  'prove-bypass/brief': 'With backwash or a tap on its side open, the flow must die away.',
  'prove-bypass/brief-none': 'No bypass: close the stop valves on both sides, or the main. An open cold tap must stay dry.',
  'prove-bypass/brief-twin': '{tank} alone: its inlet and outlet closed, the other one serves. A tap on its side must die away.',
  'pressure-off': 'Relieve the pressure',
  'pressure-off/text':
    'Move the valve to backwash while it still has power. See the drain run, then stop. Prove it a second way: a tap or gauge on the softener side is dead. A plugged or frozen drain stands still too.',
  'pressure-off/text-by-hand':
    'Turn the valve to backwash by hand. See the drain run, then stop. Prove it a second way: a tap or gauge on the softener side is dead. A plugged or frozen drain stands still too.',
  'pressure-off/text-short':
    'Put the softener in bypass and prove it holds. Move the valve to backwash while it has power: see the drain run, then stop. A tap or gauge on the softener side must be dead too. Only then unplug it.',
  'pressure-off/brief':
    'To backwash while it has power: drain seen running, then stopped. Second proof: a tap or gauge on its side is dead.',
  'pressure-off/brief-by-hand': 'To backwash by hand: drain seen running, then stopped. Second proof: a tap or gauge on its side is dead.',
  'power-off': 'Unplug the valve',
  'power-off/text': 'Only now unplug the valve.',
  'power-off/brief': 'Only now unplug the valve.',
  'bonding-jumper': 'Fit a bonding jumper',
  'bonding-jumper/text': 'Fit a bonding jumper across the softener before you open the pipe.',
  'bonding-jumper/text-unknown': 'If the pipe is metal, fit a bonding jumper across the softener before you open it.',
  'bonding-jumper/brief': 'Across the softener, before pipe is opened.',
  'bonding-jumper/brief-unknown': 'Metal pipe: across the softener, before it is opened.',
  'remove-valve': 'Take the valve off',
  'remove-valve/text':
    'Disconnect the drain and brine lines. Unclip the bypass and the meter plug. Then unscrew the valve by hand, lift it straight off the tube and lay it on something clean.',
  'remove-valve/brief': 'Drain and brine lines off, bypass and meter unclipped. Then unscrew by hand, lift straight off the tube.',
  'measure-bed': 'Measure the bed, take a sample',
  'measure-bed/text':
    'Before you drain: measure the depth of the bed, and take a spoonful of beads from its top. Firm or soft, whole or broken, color.',
  'measure-bed/brief': 'Before draining: depth of the bed, a spoonful of beads from its top.',
  'drain-tank': 'Drain the tank, keep it vented',
  'drain-tank/text': 'Siphon or vacuum the water out. Keep the opening free, so air comes in as water goes out.',
  'drain-tank/brief': 'Siphon or vacuum the water out with the opening kept free.',
  'take-out-media': 'Remove tube and old bed',
  'take-out-media/text':
    'With two people, tip the tank over a sheet, or vacuum it where it stands. Take the tube out once it comes loose. Collect every bead.',
  'take-out-media/text-unknown':
    'Up to 12 in (30 cm) across and 150 lb (68 kg) drained, two people tip the tank over a sheet. A larger one is vacuumed where it stands. Take the tube out once it comes loose. Collect every bead.',
  'take-out-media/text-large':
    'Vacuum or flush the bed out where it stands. Don’t tip the tank. Take the tube out once it comes loose. Collect every bead.',
  'take-out-media/brief': 'Two people tip it over a sheet, or vacuum it. Tube out once loose. Collect every bead.',
  'take-out-media/brief-unknown':
    'Up to 12 in (30 cm) and 150 lb (68 kg) drained two people tip it; larger: vacuum. Tube out once loose. Every bead.',
  'take-out-media/brief-large': 'Vacuum or flush it out where it stands. Tube out once loose. Collect every bead.',
  'inspect-tank': 'Rinse and inspect the tank',
  'inspect-tank/text': 'Rinse the tank. With a lamp, look at the inside, the neck thread, the bottom recess and the base.',
  'inspect-tank/brief': 'Look with a lamp: inside, neck thread, bottom recess, base.',
  'cut-tube': 'Cut the new tube',
  'cut-tube/text':
    'Lay the new tube beside the old one, basket to basket. If the old one fitted and the baskets match, cut it to the same length ({cutLength}). If not, stand it in the bottom recess and mark it flush with the rim; some valves need an offset. Cut square and deburr.',
  'cut-tube/text-hub':
    'Set the new hub in the bottom recess and screw the laterals in by hand, level and whole. Cut the tube to the old one’s length ({cutLength}), square and deburred. The maker’s card comes first.',
  'cut-tube/brief':
    'As the old tube, basket to basket, if it fitted and baskets match ({cutLength}); else flush with the rim or by the valve’s offset. Square, deburred.',
  'cut-tube/brief-hub':
    'New hub, laterals by hand, level and whole. Tube as the old one ({cutLength}), square, deburred; maker’s card first.',
  'cut-tube/length': 'the kit says {length}',
  'cut-tube/length-unknown': 'the kit has no length: the old tube decides',
  'cap-tube': 'Center the tube, cap it',
  'cap-tube/text':
    'Stand the tube in the bottom recess, upright, in the middle of the neck. Put the cap on. One cap goes in: count it out again later.',
  'cap-tube/brief': 'In the bottom recess, upright, in the middle. Cap on: one goes in.',
  'water-first': 'Put water in the tank',
  'water-first/text':
    'Fill the tank about a third with water before you pour anything in. It cushions what you pour and keeps the tube in place.',
  'water-first/brief': 'A third full, before anything is poured in.',
  'pour-gravel': 'Pour the gravel',
  'pour-gravel/text': 'Pour {gravel} around the tube, coarse before fine. Level it. Hold the tube in the middle.',
  'pour-gravel/text-unknown': 'If this tank takes gravel, pour it now around the tube, coarse before fine ({gravel}). Level it.',
  'pour-gravel/brief': '{gravel}, coarse before fine. Level it.',
  'pour-gravel/brief-unknown': 'If the tank takes it: {gravel}, coarse before fine. Level it.',
  'pour-gravel/amount': '{weight} of gravel',
  'pour-gravel/amount-unknown': 'the gravel in the kit',
  'pour-resin': 'Pour the resin',
  'pour-resin/text':
    'With the funnel on the neck, pour in {resin}. The tank is then about two thirds full. Hold the tube down in the middle all the time.',
  'pour-resin/brief': '{resin} through the funnel, to about two thirds. Hold the tube down.',
  'pour-resin/amount': '{volume} of resin',
  'pour-resin/amount-assumed': 'the resin in the kit ({volume} assumed)',
  'cap-out': 'Take the cap out, count it',
  'cap-out/text': 'Rinse beads off the neck and the top of the tube. Take the cap out, hold it in your hand, count it.',
  'cap-out/brief': 'Rinse beads off the neck. Cap in your hand: one in, one out.',
  'seat-valve': 'New seals, seat the valve',
  'seat-valve/text':
    'While the valve is off, look at injector, screen, piston, seals and spacers. Fit new seals, silicone grease only. Fill the tank with water. Set the valve over the tube and hand-thread it until the O-ring seats, then at most ¼ to ½ turn more, or the maker’s figure where known.',
  'seat-valve/brief':
    'Look at injector, screen, piston, seals. New seals, silicone grease only. Fill with water. Hand-thread until the O-ring seats, then at most ¼ to ½ turn, or the maker’s figure.',
  reconnect: 'Reconnect the lines',
  'reconnect/text':
    'Connect water, brine and drain. Fix the drain line without a kink. Check the air gap at the drain: at least twice the bore of the drain line, and at least 1 in (25 mm). Take the aerators off the taps nearest the softener.',
  'reconnect/brief': 'Water, brine, drain. Air gap: twice the drain’s bore, at least 1 in (25 mm). Aerators off.',
  'start-in-backwash': 'Start slowly, in backwash',
  'start-in-backwash/text':
    'Put a strainer on the first flow at the drain. Give the valve power, start a manual regeneration and stop it in backwash. Then open the water a little at a time, so trapped air leaves by the drain.',
  'start-in-backwash/brief':
    'Strainer on the drain. Power on, manual regeneration, stop in backwash. Water a little at a time: air leaves by the drain.',
  'run-clear': 'Let it run clear',
  'run-clear/text': 'Let the backwash run for some minutes, until the drain is clear and carries no beads.',
  'run-clear/brief': 'Some minutes, until clear and without beads.',
  'leaks-first': 'Look for leaks under pressure',
  'leaks-first/text': 'Look at the neck, the bypass, the brine line and every joint you opened.',
  'leaks-first/brief': 'Neck, bypass, brine line, every joint you opened.',
  sanitise: 'Sanitize',
  'sanitise/text': 'Pour {bleach} into the brine well. None if iron cleaner was used and not rinsed out. Open a window or a door.',
  'sanitise/brief': '{bleach} into the brine well. None if iron cleaner was used. Fresh air.',
  'check-brine': 'Check brine draw and refill',
  'check-brine/text':
    'Step the valve to brine: the level in the brine well must fall. Step it to refill: on a timed valve the time stops it, below the float. The float is the safety above: one that stops each refill is too low, or the time too long. Lead the overflow to a drain.',
  'check-brine/brief': 'Brine: the level in the well falls. Refill: a timed one stops by time, float above it. Overflow led to a drain.',
  'full-regeneration': 'Run a full regeneration',
  'full-regeneration/text':
    'Start a full regeneration. Tell the household: no hot water until it has ended. Stay through it if time allows, or say when it ends. During and after the rinse compare conductivity or use a chloride strip: only that shows brining.',
  'full-regeneration/brief':
    'No hot water until it has ended. Stay through it, or say when it ends. Conductivity or a chloride strip shows brining.',
  'test-outlet': 'Test at the valve outlet',
  'test-outlet/text':
    'Turn the valve to service and run a cold tap for two minutes. Test at the valve outlet, not at a hot tap, and before the regeneration begins: most valves pass raw water while they regenerate. Below {limit} shows that little raw water gets by. It does not show that brining works: new resin comes in sodium form.',
  'test-outlet/text-after':
    'After the regeneration has ended, never during it: most valves then pass raw water. Test at the valve outlet, not at a hot tap. It should be below {limit}.',
  'test-outlet/brief':
    'In service, before the regeneration, not at a hot tap. Below {limit}, little raw water gets by; it doesn’t show brining.',
  'hand-over': 'Set, open and hand over',
  'hand-over/text':
    'Take the jumper off. When the regeneration has ended: flush the cold taps first, then open the heater’s inlet, turn the heater on, flush the hot ones. Aerators back, settings entered, in service. Show the household how to use the bypass.',
  'hand-over/text-short': 'Softener in service, no leaks, clock right, salt topped up. Tell the household what you found.',
  'hand-over/brief':
    'Jumper off. After the regeneration: cold taps, then the heater’s inlet and heater on, hot taps. Aerators, settings, in service. Show the bypass.',
  'hand-over-short': 'Leave it running',
  'clear-away': 'Take away the old bed',
  'clear-away/text':
    'Close the pails and take the spent resin away. Your company makes the waste and decides whether it is hazardous: follow the local rule.',
  'clear-away/text-well':
    'Close the pails and take the spent resin away. From well water it may hold metals or radium: the local rule decides where it goes.',
  'clear-away-empty': 'Leave the floor clean',
  'clear-away/text-empty': 'Take up spilled beads and take the empty bags along. The old bed left on the earlier visit.',
  'clear-away/brief-empty': 'Beads taken up, empty bags taken along. The old bed left earlier.',
  'clear-away/brief': 'Pails closed. Where spent resin may go is a local rule.',
  'clear-away/brief-well': 'Pails closed. From a well it may hold metals or radium: local rule.',
  'of-tank': '{title}: {tank}',
  'test-water': 'Test the water',
  'test-water/text': 'Test hardness ahead of the softener and at the valve outlet, not at a hot tap.',
  'check-brine-tank': 'Look at salt and brine',
  'check-brine-tank/text':
    'Look for a salt bridge, sludge and the water level. Clean the brine well if it is dirty. The overflow must lead to a drain.',
  'check-settings': 'Check the settings',
  'check-settings/text': 'Compare hardness, time and salt setting with the record and with the water you just tested.',
  'check-regeneration': 'Step through a regeneration',
  'check-regeneration/text': 'Start a manual regeneration: backwash runs clear, brine draws, refill stops at the right level.',
  'look-at-beads': 'Look at the beads',
  'look-at-beads/text':
    'If the valve comes off easily, take a spoonful from the top of the bed: firm or soft, whole or broken, color. Measure from the rim down to the bed.',
  'clean-bed': 'Clean the bed',
  'clean-bed/text':
    'Leave the softener in service and shut the house off behind it, or keep every tap shut: in bypass nothing would draw or rinse the cleaner. Use one made for iron-fouled softener resin, by the maker’s dose and time. Rinse until the drain is clear, then run a full regeneration.',
  repair: 'Find and fix the fault',
  'repair/text': 'Find the fault, change the part, write down what was wrong.',
  'what-happened': 'What happened?',
  'what-happened/text': 'Ask and look before you touch anything. If water is running out, shut the main first.',
  'stop-beads': 'Stop the beads',
  'stop-beads/text':
    'Softener in bypass. Close the hot water. Appliances off. Then flush from the main, tap by tap, aerators off. Clean screens, the heater and the ice-maker.',
  'stop-water': 'Stop the water',
  'stop-water/text':
    'Put the softener in bypass; if that doesn’t stop it, shut the main. Relieve the pressure. Find where the water came from. Then give the house water through the bypass.',
  'find-water': 'Give the house water',
  'find-water/text':
    'Put the softener in bypass and open a cold tap. If water comes, the softener holds it back: a valve stuck between positions, a plugged bed, a cap left in the tube. If none comes, look at the main and ask the neighbors.',
  'leave-safe': 'Leave it safe',
  'leave-safe/text':
    'Softener in service only if nothing leaks and no beads come. Otherwise it stays in bypass. Tell the household what you found and what follows.',
  'set-tank': 'Set the new softener',
  'set-tank/text':
    'Level floor, drain and power in reach, room to lift the tube out. Fill the tank where it stands: tube in the bottom recess, cap on, water, gravel, resin. One that comes filled: look into its tube.',
  'set-tank-exchange': 'Put the other tank in its place',
  'set-tank/text-exchange':
    'Cap or bag the old tank’s neck and carry it out as it is. Set the other one level in its place and look into its tube. Compare its size and resin with what the job says.',
  work: 'Do the work',
  'work/text': 'Do what the job says. Write down what you did and what you found.',
  'procedure/rebed': 'Rebed',
  'procedure/annual-visit': 'Annual visit',
  'procedure/cleaning': 'Cleaning',
  'procedure/inspection': 'Inspection',
  'procedure/repair': 'Repair',
  'procedure/emergency': 'Emergency',
  'procedure/installation': 'Installation',
  'procedure/exchange': 'Tank exchange',
  'procedure/delivery': 'Delivery',
  'assumed/times': '{reason} Times are for {volume}.',
  'assumed/bypass': 'Bypass not recorded: the steps expect one.',
  'assumed/pipe': 'Pipe material not recorded: the bonding jumper is kept in.',
  'assumed/power': 'Valve power not recorded: the steps expect that it has some.',
  'assumed/pressure': 'Pressure not recorded: the steps ask for it.',
} as const
