'use client'
import { PinMap } from '@almanac/ui/pin-map'
import { useQuery } from '@tanstack/react-query'
import type { Degrees } from '@/client/place-text'
import { useSession } from '@/client/providers'

/** The site's pin among the nearest sites whose place is known, to be moved by hand. */
export function PlacePin({
  siteId,
  name,
  place,
  onMove,
}: {
  siteId: string
  name: string
  place: Degrees | null
  onMove: (place: Degrees) => void
}) {
  const { api, me } = useSession()
  // Not read again while the form is open: the sheet would jump under the hand.
  const nearby = useQuery(api.sites.nearby.queryOptions({ input: { siteId }, staleTime: Number.POSITIVE_INFINITY }))
  if (!nearby.data) return null
  return (
    <div>
      <PinMap {...{ name, onMove }} pin={place} yard={nearby.data.yard} landmarks={nearby.data.places} display={me.company} />
      <p className="mt-1 text-small text-soft">
        Click, drag or use the arrow keys to move the pin. Dots are sites with a known place; no network needed.
      </p>
    </div>
  )
}
