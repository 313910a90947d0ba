/** What the page's classes give an element and a picture by itself would lose. */
const KEPT = [
  ...['fill', 'fill-opacity', 'stroke', 'stroke-width', 'stroke-dasharray', 'stroke-linecap', 'opacity', 'paint-order'],
  ...['font-size', 'font-weight', 'text-anchor', 'display'],
]

const MARGIN = 24
const HEAD = 36
/** Twice the size on the page, for print. */
const SCALE = 2

/** The picture with its styles written into it, as light as on paper whatever the screen shows. */
function standalone(svg: SVGSVGElement): SVGSVGElement {
  const stage = document.createElement('div')
  // The colours are light-dark() pairs; this stage decides for light.
  stage.style.cssText = 'position:absolute;left:-99999px;top:0;color-scheme:light'
  stage.className = 'text-small'
  const copy = svg.cloneNode(true) as SVGSVGElement
  stage.append(copy)
  document.body.append(stage)
  for (const element of [copy, ...copy.querySelectorAll<SVGElement>('*')]) {
    const seen = getComputedStyle(element)
    for (const name of KEPT) element.style.setProperty(name, seen.getPropertyValue(name))
    element.removeAttribute('class')
  }
  stage.remove()
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg')
  copy.style.fontFamily = 'sans-serif'
  copy.style.position = 'static'
  return copy
}

function load(url: string): Promise<HTMLImageElement> {
  return new Promise((resolve, reject) => {
    const image = new Image()
    image.onload = () => resolve(image)
    image.onerror = () => reject(new Error('The chart could not be drawn.'))
    image.src = url
  })
}

/** A plot's picture as PNG with its title above, on a light ground. */
export async function savePicture(svg: SVGSVGElement, title: string): Promise<Blob> {
  const { width, height } = svg.getBoundingClientRect()
  const text = new XMLSerializer().serializeToString(standalone(svg))
  const image = await load(`data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`)
  const canvas = document.createElement('canvas')
  canvas.width = (width + 2 * MARGIN) * SCALE
  canvas.height = (height + 2 * MARGIN + HEAD) * SCALE
  const pen = canvas.getContext('2d')
  if (!pen) throw new Error('This browser can’t save charts.')
  pen.scale(SCALE, SCALE)
  pen.fillStyle = '#f7f6f2'
  pen.fillRect(0, 0, canvas.width, canvas.height)
  pen.fillStyle = '#1d2a33'
  pen.font = '600 17px sans-serif'
  pen.fillText(title, MARGIN, MARGIN + 14)
  pen.drawImage(image, MARGIN, MARGIN + HEAD, width, height)
  return new Promise((resolve, reject) =>
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('The chart could not be saved.'))), 'image/png'),
  )
}
