import sharp from 'sharp'

/** Longest edge on paper: half a sheet's width at 200 dots an inch. */
const PRINTED_EDGE = 800

/** A kept photograph as small as a printed sheet needs it, so that a report of many can still be mailed. */
export async function printedPhotograph(bytes: Uint8Array): Promise<Uint8Array> {
  const small = sharp(bytes).resize({ width: PRINTED_EDGE, height: PRINTED_EDGE, fit: 'inside', withoutEnlargement: true })
  return new Uint8Array(await small.jpeg({ quality: 78 }).toBuffer())
}
