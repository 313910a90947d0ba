import { halfWidthAtIn, type TankShell } from '../tanks/tank-geometry.ts'
import type { PathCommand } from './drawing-types.ts'

/** The inside of a tank between two heights as a closed path, following the dished ends; empty when the heights leave nothing between. */
export function regionPath(shell: TankShell, fromIn: number, toIn: number): PathCommand[] {
  const low = Math.max(shell.bottomIn, Math.min(fromIn, shell.crownIn))
  const high = Math.max(shell.bottomIn, Math.min(toIn, shell.crownIn))
  if (high - low < 1e-6) return []
  const right = sidePoints(shell, low, high)
  const first = right[0]
  if (first === undefined) return []
  const path: PathCommand[] = [{ kind: 'move', x: first.x, y: first.y }]
  for (let at = 1; at < right.length; at += 1) path.push(step(shell, right[at - 1], right[at], 'anticlockwise'))
  const left = right.map(({ x, y }) => ({ x: -x, y })).reverse()
  const top = left[0]
  if (top && top.x < -1e-9) path.push({ kind: 'line', x: top.x, y: top.y })
  for (let at = 1; at < left.length; at += 1) path.push(step(shell, left[at - 1], left[at], 'anticlockwise'))
  path.push({ kind: 'close' })
  return path
}

type Corner = { x: number; y: number }

/** Corners up the right side: the ends, and where the dished ends meet the straight part. */
function sidePoints(shell: TankShell, low: number, high: number): Corner[] {
  const shoulders = [shell.bottomIn + shell.headDepthIn, shell.crownIn - shell.headDepthIn]
  const heights = [low, ...shoulders.filter((y) => y > low + 1e-6 && y < high - 1e-6), high]
  return heights.map((y) => ({ x: halfWidthAtIn(shell, y), y }))
}

function step(shell: TankShell, from: Corner | undefined, to: Corner | undefined, turn: 'anticlockwise'): PathCommand {
  if (from === undefined || to === undefined) return { kind: 'close' }
  const middle = (from.y + to.y) / 2
  const straight = middle > shell.bottomIn + shell.headDepthIn && middle < shell.crownIn - shell.headDepthIn
  if (straight) return { kind: 'line', x: to.x, y: to.y }
  return { kind: 'arc', x: to.x, y: to.y, radiusXIn: shell.diameterIn / 2, radiusYIn: shell.headDepthIn, turn }
}

/** A rectangle centred on the axis, or anywhere by its left edge. */
export function boxPath(leftIn: number, bottomIn: number, rightIn: number, topIn: number): PathCommand[] {
  return [
    { kind: 'move', x: leftIn, y: bottomIn },
    { kind: 'line', x: rightIn, y: bottomIn },
    { kind: 'line', x: rightIn, y: topIn },
    { kind: 'line', x: leftIn, y: topIn },
    { kind: 'close' },
  ]
}

/** An open line between two points. */
export function linePath(x1: number, y1: number, x2: number, y2: number): PathCommand[] {
  return [
    { kind: 'move', x: x1, y: y1 },
    { kind: 'line', x: x2, y: y2 },
  ]
}
