import type { Draft } from './draft.ts'

/** Old beads as found, and the cause they point to; the technician may choose another. */
const CAUSE_OF_BEADS: Record<string, { endCause: string; evidence: string } | undefined> = {
  soft: { endCause: 'oxidised', evidence: 'soft beads, crush between the fingers' },
  broken: { endCause: 'worn', evidence: 'broken beads, many fines' },
  iron: { endCause: 'iron-fouled', evidence: 'rust-coloured beads' },
  short: { endCause: 'beads-lost', evidence: 'much resin missing' },
}

/** Fields of the closing form that the steps have answered already; what was typed in the form stands. */
export function prefilled(draft: Draft): Partial<Draft> {
  const { answers } = draft
  const text = (id: string) => answers[id]?.text ?? ''
  const unit = (id: string) => answers[id]?.unit ?? ''
  const beads = CAUSE_OF_BEADS[text('old-beads')]
  return {
    takenOut: draft.takenOut || text('old-tube-length-in') !== '',
    endCause: draft.endCause || (text('tank-condition') === 'cracked' ? 'tank-cracked' : (beads?.endCause ?? '')),
    evidence: draft.evidence || (beads?.evidence ?? ''),
    volume: draft.volume || text('resin-ft3'),
    volumeUnit: draft.volumeUnit || unit('resin-ft3'),
    gravel: draft.gravel || text('gravel-lb'),
    gravelUnit: draft.gravelUnit || unit('gravel-lb'),
    tube: draft.tube || text('new-tube-length-in'),
    tubeUnit: draft.tubeUnit || unit('new-tube-length-in'),
  }
}
