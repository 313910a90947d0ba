/** What can hurt at a check or an advice, said before it: hazard, consequence, how to avoid it. Common practice, no source. */
export const diagnosisCautions = {
  overflow: 'Keep the overflow free: a brine tank that goes on filling floods the floor. If it rises, put the softener in bypass.',
  'look-only': 'Look only: no cover off, and nothing touched with wet hands or on a wet floor.',
  'turn-slowly': 'Turn the bypass slowly. Above 80 psi (5.5 bar) the house needs a pressure regulator.',
  'poured-before': 'Never mix bleach with iron cleaner: it makes toxic gas. Ask what was poured into the brine tank before.',
  'drain-takes-it': 'Water runs to the drain: see that standpipe or sump take it before you start.',
  'cover-on': 'Leave the valve’s cover on while it is plugged in.',
  'bypass-first': 'Bypass, proven to hold; then backwash until the drain stops. Nothing is opened while there is pressure.',
  'unplug-last': 'Unplug only after the pressure is gone: without power the valve cannot let it out.',
  'beads-roll': 'Wet beads roll underfoot: a sheet on the floor, and sweep before you walk.',
  'rinse-between':
    'Never mix bleach with iron cleaner: it makes toxic gas. Rinse one out fully before the other comes near, and air the room.',
} as const
