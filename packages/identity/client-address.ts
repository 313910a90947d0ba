/**
 * The header in which the server's front writes where a request came from, over whatever the request said of itself (apps/web/front). Everything that counts
 * by address reads this one and no other.
 */
export const ADDRESS_HEADER = 'x-almanac-address'

/** Where a request came from; 'unknown' where no front has written it, as in a test that calls a route by itself. */
export function clientAddress(headers: Headers): string {
  return headers.get(ADDRESS_HEADER) ?? 'unknown'
}
