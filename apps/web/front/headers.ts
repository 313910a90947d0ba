/** Pages and files for whoever holds a link: the next page's server must not learn the address. */
const LINKED = /^\/(?:api\/)?(?:arrival|calendar|measure|reminder)\//

/** Scripts need this page's own nonce; React writes style attributes, which cannot carry one. */
const contentPolicy = (nonce: string, development: boolean) =>
  [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}'${development ? " 'unsafe-eval'" : ''}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    "object-src 'none'",
    "frame-ancestors 'none'",
    "base-uri 'self'",
    "form-action 'self'",
  ].join('; ')

/** What every answer carries, whatever makes it. */
export function securityHeaders(path: string, nonce: string, how: { https: boolean; development: boolean }): Record<string, string> {
  return {
    'Content-Security-Policy': contentPolicy(nonce, how.development),
    'Permissions-Policy': 'camera=(), display-capture=(), geolocation=(), microphone=(), payment=(), usb=()',
    'Referrer-Policy': LINKED.test(path) ? 'no-referrer' : 'same-origin',
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    ...(how.https ? { 'Strict-Transport-Security': 'max-age=31536000' } : {}),
  }
}
