import { describe, expect, test } from 'vitest'
import { addressOf, trustedProxies } from './address.ts'

// Addresses set aside for examples: RFC 5737 (192.0.2.0/24, 198.51.100.0/24, 203.0.113.0/24) and RFC 3849 (2001:db8::/32).
const none = trustedProxies([])
const proxies = trustedProxies(['192.0.2.10', '10.0.0.0/8', '2001:db8:ffff::/48'])

describe('where a request came from', () => {
  test.each([
    ['whatever it says of itself', '203.0.113.5', '198.51.100.1'],
    ['and rubbish', '203.0.113.5', "'; drop table, ,,"],
    ['and nothing', '203.0.113.5', undefined],
    ['in the wrapping of IPv6', '::ffff:203.0.113.5', '198.51.100.1'],
  ])('is the socket’s address where no proxy is trusted, %s', (_, socket, forwarded) => {
    expect(addressOf(socket, forwarded, none)).toBe('203.0.113.5')
  })

  test.each([
    ['one trusted proxy', '192.0.2.10', '198.51.100.1', '198.51.100.1'],
    ['what the request made up stands before what the proxy wrote', '192.0.2.10', '1.1.1.1, 198.51.100.1', '198.51.100.1'],
    ['two trusted proxies', '10.1.2.3', '1.1.1.1, 198.51.100.1, 10.9.9.9', '198.51.100.1'],
    ['a trusted proxy that says nothing', '192.0.2.10', undefined, '192.0.2.10'],
    ['a trusted proxy that passes rubbish on', '192.0.2.10', '198.51.100.1, rubbish', '192.0.2.10'],
    ['a trusted proxy of IPv6', '2001:db8:ffff::1', '198.51.100.1', '198.51.100.1'],
    ['somebody who is no proxy', '203.0.113.5', '198.51.100.1', '203.0.113.5'],
    ['only trusted ones', '10.1.2.3', '10.9.9.9', '10.9.9.9'],
  ])('with trusted proxies: %s', (_, socket, forwarded, address) => {
    expect(addressOf(socket, forwarded, proxies)).toBe(address)
  })

  test('is of IPv6 the /64 that one customer of a provider has', () => {
    expect(addressOf('2001:db8:1:2:3:4:5:6', undefined, none)).toBe('2001:db8:1:2::')
    expect(addressOf('2001:DB8:1:2::9', undefined, none)).toBe('2001:db8:1:2::')
    expect(addressOf('2001:db8::9', undefined, none)).toBe('2001:db8:0:0::')
    expect(addressOf('::1', undefined, none)).toBe('0:0:0:0::')
    expect(addressOf(undefined, undefined, none)).toBe('unknown')
  })
})
