import { drawBedThumb } from '@almanac/softener/drawing/bed-drawing'
import type { TankCandidate, TankIdentity } from '@almanac/softener/identify/identify-tank'
import { BedThumb } from '@almanac/ui/bed-thumb'
import { useDisplay } from '@almanac/ui/display'
import { formatCutLengthIn, formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { formatChance } from '@almanac/units/format-number'
import { useRebedFirm } from '@/client/use-rebed-firm'

/** What it may be, likeliest first, each drawn to one scale, with what it would mean for a rebed. */
export function Candidates({ identity, most }: { identity: TankIdentity; most: number }) {
  const display = useDisplay()
  const shown = identity.candidates.slice(0, most)
  const left = identity.candidates.slice(most).reduce((sum, one) => sum + one.chance, identity.otherChance)
  return (
    <>
      <ol className="border-t border-line">
        {shown.map((one) => (
          <Candidate key={one.id} one={one} />
        ))}
      </ol>
      {left >= 0.005 ? <p className="mt-2 text-small text-soft">All others together: {formatChance(left, display)}.</p> : null}
    </>
  )
}

function Candidate({ one }: { one: TankCandidate }) {
  const firm = useRebedFirm()
  const { display } = firm
  const { diameterIn, heightIn, kit } = one
  const thumb = diameterIn === null ? null : drawBedThumb({ diameterIn, heightIn, resinVolumeFt3: kit?.resinFt3 ?? null, ...firm })
  return (
    <li className="grid grid-cols-[3.5rem_minmax(0,1fr)] gap-x-4 border-b border-line py-3">
      <span className="flex items-end justify-center">
        <BedThumb thumb={thumb?.ok ? thumb.value : null} height={62} />
      </span>
      <div className="min-w-0">
        <p className="flex items-baseline justify-between gap-3">
          <strong className="font-semibold">{one.label}</strong>
          <span>{formatChance(one.chance, display)}</span>
        </p>
        <span aria-hidden="true" className="my-1 block h-2 bg-wash">
          <span className="block h-2 min-w-px bg-water" style={{ width: `${one.chance * 100}%` }} />
        </span>
        {kit ? (
          <p className="text-small text-soft">
            {formatVolumeFt3(kit.resinFt3, display)} of resin: {kit.bags}.{' '}
            {kit.gravelLb >= 0.5 ? `${formatWeightLb(kit.gravelLb, display)} of gravel` : 'No gravel'}, tube about{' '}
            {formatCutLengthIn(kit.tubeLengthIn, display)}, {kit.crewSize} people, {formatWeightLb(kit.fullTankLb, display)} when full.
          </p>
        ) : (
          <p className="text-small text-soft">{one.kitReason}</p>
        )}
      </div>
    </li>
  )
}
