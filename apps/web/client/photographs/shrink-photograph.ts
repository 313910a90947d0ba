/** Longest edge of what is sent; the server keeps no more. */
const EDGE = 1600
const QUALITY = 0.82

/**
 * A photograph as the tablet sends it: upright, small, drawn anew as a JPEG, so that it carries neither place nor device. Throws where the browser can't read it.
 */
export async function shrinkPhotograph(file: Blob): Promise<ArrayBuffer> {
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' })
  const scale = Math.min(1, EDGE / Math.max(bitmap.width, bitmap.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(bitmap.width * scale))
  canvas.height = Math.max(1, Math.round(bitmap.height * scale))
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height)
  bitmap.close()
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY))
  if (!blob) throw new Error('the browser made no picture')
  return blob.arrayBuffer()
}
