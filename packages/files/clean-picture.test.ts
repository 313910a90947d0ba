import exifr from 'exifr'
import sharp from 'sharp'
import { beforeAll, describe, expect, test } from 'vitest'
import { cameraPicture, HIDDEN } from '../../tests/support/camera-picture.ts'
import { cleanPhotograph, cleanSignature } from './clean-picture.ts'

let taken: Uint8Array

beforeAll(async () => {
  taken = await cameraPicture()
})

describe('a photograph', () => {
  test('loses where it was taken, by what, and what was written into it; an independent reader finds nothing', async () => {
    // 42′ 36″ is 0.71°, 25′ 12″ is 0.42°.
    const before = await exifr.gps(Buffer.from(taken))
    expect([before?.latitude.toFixed(2), before?.longitude.toFixed(2)]).toEqual(['41.71', '-88.42'])
    expect(Buffer.from(taken).includes(HIDDEN)).toBe(true)
    const { bytes } = await cleanPhotograph(taken)
    const kept = Buffer.from(bytes)
    expect(await exifr.gps(kept)).toBeUndefined()
    expect(await exifr.parse(kept, true)).toSatisfy((all) => all === undefined || !('Make' in all || 'GPSLatitude' in all))
    for (const sign of ['Exif', 'Larkmoor', HIDDEN, 'http://ns.adobe.com']) expect([sign, kept.includes(sign)]).toEqual([sign, false])
  })

  test('stands upright: one that was taken on its side is as wide as it was high', async () => {
    const { bytes, width, height } = await cleanPhotograph(taken)
    expect([width, height]).toEqual([480, 640])
    expect(await sharp(bytes).metadata()).toMatchObject({ format: 'jpeg', width: 480, height: 640 })
  })

  test('is no larger than 1600 pixels along, and none is made larger', async () => {
    const large = await sharp({ create: { width: 4000, height: 3000, channels: 3, background: '#884422' } })
      .png()
      .toBuffer()
    expect(await cleanPhotograph(large)).toMatchObject({ width: 1600, height: 1200 })
  })

  test.each<[string, () => Uint8Array | Promise<Uint8Array>]>([
    ['a page', () => new TextEncoder().encode('<html><script>alert(1)</script>')],
    ['a drawing that could load others', () => new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>')],
    ['half a picture', () => taken.slice(0, taken.length / 2)],
    ['a picture’s first bytes alone', () => new Uint8Array([0xff, 0xd8, 0xff, 0xe0])],
    ['nothing', () => new Uint8Array()],
    [
      'more pixels than a camera has',
      () =>
        sharp({ create: { width: 9000, height: 9000, channels: 3, background: '#000' } })
          .png()
          .toBuffer(),
    ],
  ])('that is %s is refused with a sentence', async (_, make) => {
    await expect(cleanPhotograph(await make())).rejects.toMatchObject({
      code: 'invalid',
      message: expect.stringContaining('take it again'),
    })
  })
})

test('a signature is kept dark on white, as a PNG that says nothing else', async () => {
  const lines =
    '<svg xmlns="http://www.w3.org/2000/svg" width="900" height="300"><path d="M50 200L400 90L800 220" stroke="#000" stroke-width="9"/></svg>'
  const drawn = await sharp(Buffer.from(lines))
    .png()
    .withExif({ IFD0: { ImageDescription: HIDDEN } })
    .toBuffer()
  const { bytes, width, height } = await cleanSignature(drawn)
  expect([width, height]).toEqual([800, 267])
  expect(Buffer.from(bytes).includes(HIDDEN)).toBe(false)
  const { data, info } = await sharp(bytes).greyscale().raw().toBuffer({ resolveWithObject: true })
  expect(info.channels).toBe(1)
  expect([data.reduce((most, one) => Math.max(most, one)), data.reduce((least, one) => Math.min(least, one))]).toEqual([255, 0])
})
