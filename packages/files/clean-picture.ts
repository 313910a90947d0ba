import { AppError } from '@almanac/runtime/errors'
import sharp, { type Sharp } from 'sharp'

/** Larger than any camera's picture once a tablet has shrunk it, and what a server can unpack without harm. */
const MOST_PIXELS = 40_000_000
/** Longest edge of a photograph that is kept: the tablet sends as much, and a report prints it sharp over a whole line. */
const PHOTOGRAPH_EDGE = 1600
const SIGNATURE_EDGE = 800
/** A logo at the head of a paper: at its largest, 150 × 52 points, as sharp as a printer draws. */
const LOGO_EDGE = { width: 600, height: 208 } as const

export type CleanPicture = { bytes: Uint8Array; width: number; height: number }

const noPicture = (cause?: unknown) =>
  new AppError(
    'invalid',
    'The picture can’t be read: it must be a whole JPEG, PNG or WebP. It was not saved; take it again.',
    { picture: true },
    cause,
  )

/** The first bytes of the kinds that are taken, by their own standards; a file's name and what its sender calls it count for nothing. */
function isPicture(bytes: Uint8Array): boolean {
  const starts = (signs: readonly number[], at = 0) => signs.every((sign, i) => bytes[at + i] === sign)
  const jpeg = starts([0xff, 0xd8, 0xff])
  const png = starts([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  const webp = starts([0x52, 0x49, 0x46, 0x46]) && starts([0x57, 0x45, 0x42, 0x50], 8)
  return jpeg || png || webp
}

async function drawnAnew(bytes: Uint8Array, how: (image: Sharp) => Sharp, refused = noPicture): Promise<CleanPicture> {
  if (!isPicture(bytes)) throw refused()
  try {
    const image = sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'error' }).autoOrient()
    const { data, info } = await how(image).toBuffer({ resolveWithObject: true })
    return { bytes: new Uint8Array(data), width: info.width, height: info.height }
  } catch (error) {
    throw refused(error)
  }
}

/**
 * A photograph as it is kept: turned upright, no larger than needed, as a JPEG drawn anew from its pixels, so that nothing else of the sent file is left: not where it
 * was taken, by which device, nor what was hidden behind it. Throws `invalid` for what is no whole picture.
 */
export const cleanPhotograph = (bytes: Uint8Array): Promise<CleanPicture> =>
  drawnAnew(bytes, (image) =>
    image
      .resize({ width: PHOTOGRAPH_EDGE, height: PHOTOGRAPH_EDGE, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .jpeg({ quality: 82 }),
  )

/** A drawn signature as it is kept: dark on white, as a PNG drawn anew. */
export const cleanSignature = (bytes: Uint8Array): Promise<CleanPicture> =>
  drawnAnew(bytes, (image) =>
    image
      .resize({ width: SIGNATURE_EDGE, height: SIGNATURE_EDGE, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .png({ palette: true, colours: 16 }),
  )

const noLogo = (cause?: unknown) =>
  new AppError('invalid', 'The logo can’t be read: it must be a whole PNG or JPEG. The old one was kept; choose another file.', {}, cause)

/** A logo as it is kept: on white, no larger than a paper needs, as a PNG drawn anew. */
export const cleanLogo = (bytes: Uint8Array): Promise<CleanPicture> =>
  drawnAnew(
    bytes,
    (image) =>
      image
        .resize({ ...LOGO_EDGE, fit: 'inside', withoutEnlargement: true })
        .flatten({ background: '#ffffff' })
        .png({ compressionLevel: 9 }),
    noLogo,
  )
