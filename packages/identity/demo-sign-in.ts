import { config } from '@almanac/runtime/config'

/** The demo's people have addresses under example.com, which is kept for examples (RFC 2606, section 3): no mail reaches them, and no firm's people have one. */
const DEMO_ADDRESS = /[@.]example\.com$/i
const THIS_MACHINE = /^(localhost|.*\.localhost|127\.[\d.]+|\[?::1\]?)$/i

/** Why this person may not sign in here, or undefined: the demo's people are let in only where the app serves no other machine than its own. */
export function whyNoDemoSignIn(email: string): string | undefined {
  if (!DEMO_ADDRESS.test(email)) return undefined
  const { HOST, PUBLIC_URL } = config()
  if (THIS_MACHINE.test(HOST) && THIS_MACHINE.test(new URL(PUBLIC_URL).hostname)) return undefined
  return 'The demo’s people can’t sign in here: this server is open to other machines. Start it on this machine only (without HOST and PUBLIC_URL) to see the demo.'
}
