import net from 'node:net'

/** Proxies whose word on where a request came from is believed: addresses and ranges, as 10.0.0.4 or 10.0.0.0/8. */
export function trustedProxies(listed: readonly string[]): net.BlockList {
  const trusted = new net.BlockList()
  for (const one of listed) {
    const [address = '', bits] = one.split('/')
    const family = net.isIPv6(address) ? 'ipv6' : 'ipv4'
    if (bits === undefined) trusted.addAddress(address, family)
    else trusted.addSubnet(address, Number(bits), family)
  }
  return trusted
}

/** One spelling for an address: IPv4 out of IPv6's wrapping, IPv6 in its shortest form; null for what is none. */
function plainAddress(text: string): string | null {
  const bare = text.trim().replace(/^::ffff:(?=\d+\.)/i, '')
  if (net.isIPv4(bare)) return bare
  if (!net.isIPv6(bare) || bare.includes('%')) return null
  return new URL(`http://[${bare}]`).hostname.slice(1, -1)
}

/** IPv6 is handed out by the /64: whoever has one address of it has 2^64, and counts as one. */
function countedAs(address: string): string {
  if (!net.isIPv6(address)) return address
  const [head = '', tail = ''] = address.split('::')
  const [first, last] = [head, tail].map((part) => part.split(':').filter(Boolean)) as [string[], string[]]
  const whole = [...first, ...Array<string>(8 - first.length - last.length).fill('0'), ...last]
  return `${whole.slice(0, 4).join(':')}::`
}

/**
 * Where a request came from: the socket's own address, unless that is a trusted proxy's. Then the list in X-Forwarded-For is read from its end, where the proxies
 * wrote, up to the first address that is no trusted proxy; what cannot be read ends it there, at the proxy that let it through.
 */
export function addressOf(socketAddress: string | undefined, forwarded: string | undefined, trusted: net.BlockList): string {
  const own = plainAddress(socketAddress ?? '')
  if (!own) return 'unknown'
  let address: string = own
  const isTrusted = (one: string) => trusted.check(one, net.isIPv6(one) ? 'ipv6' : 'ipv4')
  const chain = (forwarded ?? '').split(',').reverse()
  for (const told of chain) {
    const before: string | null = isTrusted(address) ? plainAddress(told) : null
    if (!before) break
    address = before
  }
  return countedAs(address)
}
