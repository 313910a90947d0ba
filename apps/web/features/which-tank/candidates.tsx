import { drawBedThumb } from '@almanac/softener/drawing/bed-thumb'
import type { TankCandidate, TankIdentity } from '@almanac/softener/identify/identify-tank'
import { BedThumb } from '@almanac/ui/bed-thumb'
import { formatCutLengthIn, formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { useWords } from '@almanac/words/use-words'
import { useChance } from '@/client/use-chance'
import { useRebedFirm } from '@/client/use-rebed-firm'

/** What it may be, likeliest first, each drawn to one scale, with what it would mean for a rebed. */
export function Candidates({ identity, most }: { identity: TankIdentity; most: number }) {
  const words = useWords('whichTank')
  const chance = useChance()
  const shown = identity.candidates.slice(0, most)
  const left = identity.candidates.slice(most).reduce((sum, one) => sum + one.chance, identity.otherChance)
  return (
    <>
      <ol className="border-t border-line">
        {shown.map((one) => (
          <Candidate key={one.id} one={one} />
        ))}
      </ol>
      {left >= 0.005 ? <p className="mt-2 text-small text-soft">{words('others', { chance: chance(left) })}</p> : null}
    </>
  )
}

function Candidate({ one }: { one: TankCandidate }) {
  const firm = useRebedFirm()
  const words = useWords('whichTank')
  const chance = useChance()
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
          <span>{chance(one.chance)}</span>
        </p>
        <span aria-hidden="true" className="my-1 block h-2 bg-wash">
          <span className="block h-2 min-w-px bg-water" style={{ width: `${one.chance * 100}%` }} />
        </span>
        {kit ? (
          <p className="text-small text-soft">
            {words('kit', {
              volume: formatVolumeFt3(kit.resinFt3, display),
              bags: kit.bags,
              gravel: kit.gravelLb >= 0.5 ? words('gravel', { weight: formatWeightLb(kit.gravelLb, display) }) : words('noGravel'),
              tube: formatCutLengthIn(kit.tubeLengthIn, display),
              crew: String(kit.crewSize),
              weight: formatWeightLb(kit.fullTankLb, display),
            })}
          </p>
        ) : (
          <p className="text-small text-soft">{one.kitReason}</p>
        )}
      </div>
    </li>
  )
}
