import decode from 'jsqr'

/** A picture as a camera gives it: red, green, blue, alpha, row by row. */
export interface Pixels {
  readonly data: Uint8ClampedArray
  readonly width: number
  readonly height: number
}

/** What a scanner reads in a picture; null where it finds no code. */
export const scanned = ({ data, width, height }: Pixels): string | null => {
  // The package is CommonJS: its function may stand one `default` deeper than its types say.
  const read = typeof decode === 'function' ? decode : (decode as { readonly default: typeof decode }).default
  return read(data, width, height)?.data ?? null
}

/** The path of a code as a printer draws it: `pixels` wide, each one as grey as the dark that falls on it. */
export function printed({ d, size }: { readonly d: string; readonly size: number }, pixels: number): Pixels {
  const dark = Array.from({ length: size }, () => new Array<boolean>(size).fill(false))
  for (const [, x, y, width] of d.matchAll(/M(\d+) (\d+)h(\d+)v1H\1z/g))
    dark[Number(y)]?.fill(true, Number(x), Number(x) + Number(width))
  const fine = 4
  const isDark = (at: number, row: number): boolean =>
    dark[Math.floor((row * size) / (pixels * fine))]?.[Math.floor((at * size) / (pixels * fine))] === true
  const data = new Uint8ClampedArray(pixels * pixels * 4).fill(255)
  for (let y = 0; y < pixels; y += 1)
    for (let x = 0; x < pixels; x += 1) {
      let share = 0
      for (let part = 0; part < fine * fine; part += 1)
        if (isDark(x * fine + (part % fine), y * fine + Math.floor(part / fine))) share += 1
      data.fill(255 - (share * 255) / (fine * fine), (y * pixels + x) * 4, (y * pixels + x) * 4 + 3)
    }
  return { data, width: pixels, height: pixels }
}
