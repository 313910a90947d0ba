/** Waits, if need be, until so many seconds of the present minute are left: what is counted by the minute is not to be counted across its turn. */
export async function secondsLeftOfMinute(seconds: number): Promise<void> {
  const left = 60 - new Date().getSeconds()
  if (left < seconds) await new Promise((next) => setTimeout(next, left * 1000))
}
