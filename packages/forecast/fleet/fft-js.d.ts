/** The part of fft.js that is used; the package brings no types of its own. */
declare module 'fft.js' {
  export default class FFT {
    constructor(size: number)
    createComplexArray(): number[]
    /** Scaled by 1/size. */
    inverseTransform(out: number[], data: number[]): void
  }
}
