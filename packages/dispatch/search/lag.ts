/** By how much a day is behind its times at one moment: the mean in ticks, and the variance in ticks². Written by `notBefore`, so that nothing is made anew in the search. */
export const lag = { mean: 0, variance: 0 }

const ROOT_2_PI = Math.sqrt(2 * Math.PI)
/** Beyond so many standard deviations one of the two never happens. */
const FAR = 8

/**
 * Work that can begin at its time at the earliest, for a crew that is ready `ready` ticks later than that in the mean, normal about it: the greater of a moment and a normal one
 * (Clark 1961). So minutes won before an agreed time are lost, and minutes lost are not won back. The normal distribution by Abramowitz and Stegun, 26.2.17.
 */
export function notBefore(ready: number, variance: number): void {
  const deviation = Math.sqrt(variance)
  if (deviation < 1e-9 || Math.abs(ready) > FAR * deviation) {
    lag.mean = ready > 0 ? ready : 0
    lag.variance = ready > 0 ? variance : 0
    return
  }
  const at = ready / deviation
  const density = Math.exp(-0.5 * at * at) / ROOT_2_PI
  const t = 1 / (1 + 0.2316419 * Math.abs(at))
  const beyond = density * t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
  const below = at > 0 ? 1 - beyond : beyond
  const mean = ready * below + deviation * density
  lag.mean = mean
  lag.variance = Math.max(0, (ready * ready + variance) * below + ready * deviation * density - mean * mean)
}
