/** A whole number given as `--name=5` or `--name 5`; `usual` where it is not given. */
export function readOption(args: string[], name: string, usual: number, least: number, most: number): number {
  const at = args.findIndex((arg) => arg === `--${name}` || arg.startsWith(`--${name}=`))
  if (at < 0) return usual
  const text = args[at]?.includes('=') ? args[at]?.split('=')[1] : args[at + 1]
  const value = Number(text)
  if (!Number.isInteger(value) || value < least || value > most)
    throw new Error(`--${name} must be a whole number from ${least} to ${most}.`)
  return value
}
