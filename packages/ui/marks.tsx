/** Three lines: the pages are folded away behind it. */
export function MenuMark() {
  return (
    <svg aria-hidden="true" width="22" height="16" viewBox="0 0 22 16" className="stroke-ink stroke-2">
      <path d="M0 2 H22 M0 8 H22 M0 14 H22" />
    </svg>
  )
}

/** Something more folds out downwards. */
export function MoreMark() {
  return (
    <svg aria-hidden="true" width="10" height="6" viewBox="0 0 10 6" className="fill-none stroke-current stroke-[1.5]">
      <path d="M1 1 L5 5 L9 1" />
    </svg>
  )
}

/** A lens: something can be looked for. */
export function FindMark({ size = 18 }: { size?: number }) {
  return (
    <svg aria-hidden="true" width={size} height={size} viewBox="0 0 18 18" className="shrink-0 fill-none stroke-current stroke-[1.75]">
      <circle cx="7.5" cy="7.5" r="5.5" />
      <path d="M11.8 11.8 L16.5 16.5" />
    </svg>
  )
}

/** A cross: closes what is open. */
export function CloseMark() {
  return (
    <svg aria-hidden="true" width="14" height="14" viewBox="0 0 14 14" className="stroke-current stroke-2">
      <path d="M1 1 L13 13 M13 1 L1 13" />
    </svg>
  )
}

/** A handset: a call. */
export function PhoneMark({ size = 18 }: { size?: number }) {
  return (
    <svg aria-hidden="true" width={size} height={size} viewBox="0 0 18 18" className="shrink-0 fill-none stroke-current stroke-[1.75]">
      <path d="M3 2 H6.5 L8 6 L6 7.5 A9 9 0 0 0 10.5 12 L12 10 L16 11.5 V15 A1.5 1.5 0 0 1 14.5 16.5 A13 13 0 0 1 1.5 3.5 A1.5 1.5 0 0 1 3 2 Z" />
    </svg>
  )
}
