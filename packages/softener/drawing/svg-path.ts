import type { PathCommand } from './drawing-types.ts'

/** The `d` attribute of an SVG path: y is flipped, since the drawing counts it upwards and SVG downwards. Numbers to a thousandth of an inch. */
export function svgPath(path: readonly PathCommand[]): string {
  return path.map(command).join(' ')
}

function command(step: PathCommand): string {
  switch (step.kind) {
    case 'move':
      return `M ${show(step.x)} ${show(-step.y)}`
    case 'line':
      return `L ${show(step.x)} ${show(-step.y)}`
    case 'arc': {
      // A turn keeps its sense on the page: what is clockwise with y up is drawn clockwise, which is SVG's sweep 1.
      const sweep = step.turn === 'clockwise' ? 1 : 0
      return `A ${show(step.radiusXIn)} ${show(step.radiusYIn)} 0 0 ${sweep} ${show(step.x)} ${show(-step.y)}`
    }
    case 'close':
      return 'Z'
  }
}

function show(value: number): string {
  const rounded = Math.round(value * 1000) / 1000
  return String(Object.is(rounded, -0) ? 0 : rounded)
}
