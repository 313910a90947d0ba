/** How many times a customer is offered. */
export const MOST_OFFERED = 3

/** The first so many places on different days, the best first; where there are fewer days, one more on the same day at another hour. */
export function suggestTimes<P extends { day: string; at: string }>(places: readonly P[], most = MOST_OFFERED): P[] {
  const chosen: P[] = []
  for (const place of places) if (chosen.length < most && !chosen.some((one) => one.day === place.day)) chosen.push(place)
  for (const place of places) {
    const taken = chosen.some((one) => one.day === place.day && one.at === place.at)
    if (chosen.length < most && !taken) chosen.push(place)
  }
  return chosen.sort((a, b) => (`${a.day} ${a.at}` < `${b.day} ${b.at}` ? -1 : 1))
}
