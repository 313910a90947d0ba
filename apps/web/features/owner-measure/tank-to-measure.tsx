import type { GuideMeasure } from '@almanac/records/guide-measure'
import type { Words } from '@almanac/words/words'

/** A tank with its control head, its salt bin and where to hold the tape: drawn, not to scale, for somebody who stands before one. */
export function TankToMeasure({ measure, words }: { measure: GuideMeasure; words: Words<'ownerMeasure'> }) {
  const isAround = measure === 'around'
  return (
    <svg viewBox="0 0 350 430" role="img" aria-label={words(`drawing/${measure}`)} className="mx-auto w-full max-w-md" fill="none">
      <g stroke="var(--ink)" strokeWidth="2">
        <path d="M102 2h68v34h-68z M116 12h24v12h-24z" />
        <path d="M126 36v10 M146 36v10" strokeWidth="1" />
        <path d="M100 62q0 -16 36 -16q36 0 36 16v334q0 16 -36 16q-36 0 -36 -16z" />
        <path d="M106 404v16 M166 404v16" strokeWidth="1" />
      </g>
      <path d="M0 420h350" stroke="var(--ink)" />
      <path d="M236 236h114v15h-114z M242 251v169 M344 251v169" stroke="var(--soft)" />
      {isAround ? (
        <g stroke="var(--water)" strokeWidth="2">
          <path d="M100 150q36 16 72 0v16q-36 16 -72 0z" />
          <path d="M110 155v7 M122 158v5 M136 159v9 M150 158v5 M162 155v7 M172 158h22" />
        </g>
      ) : (
        <path d="M66 46v374 M58 46h16 M58 420h16 M66 233h-12" stroke="var(--water)" strokeWidth="2" />
      )}
      <g fill="var(--soft)" fontSize="15">
        <text x="180" y="22">
          {words('valve')}
        </text>
        <foreignObject x="244" y="296" width="98" height="120">
          <p className="text-center text-small text-soft">{words('salt')}</p>
        </foreignObject>
      </g>
      <foreignObject x={isAround ? 200 : 0} y={isAround ? 138 : 60} width={isAround ? 150 : 56} height="120">
        <p className="font-semibold text-water">{words(`here/${measure}`)}</p>
      </foreignObject>
    </svg>
  )
}
