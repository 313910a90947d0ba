import sharp from 'sharp'

/** Said in a picture's comment fields; must not be found in what is kept. */
export const HIDDEN = 'Hester Vance, the key is under the pot'

/**
 * A JPEG as a camera writes it: noise that does not shrink, on its side, with the place it was taken at (41° 42′ 36″ N, 88° 25′ 12″ W), the device and a comment.
 */
export async function cameraPicture({ width = 640, height = 480 } = {}): Promise<Uint8Array> {
  const raw = Buffer.alloc(width * height * 3)
  let seed = 7
  for (let i = 0; i < raw.length; i++) {
    seed = (seed * 1103515245 + 12345) & 0x7fffffff
    raw[i] = seed >> 16
  }
  const picture = await sharp(raw, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: 90 })
    .withExif({
      IFD0: { Make: 'Larkmoor Cameras', ImageDescription: HIDDEN },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '41/1 42/1 36/1', GPSLongitudeRef: 'W', GPSLongitude: '88/1 25/1 12/1' },
    })
    .withMetadata({ orientation: 6 })
    .toBuffer()
  return new Uint8Array(picture)
}
