/** Writes a picture of few flat colours as a PNG with a palette: a third of what a browser's screenshot takes. */
import { crc32, deflateSync } from 'node:zlib'

/** Flat colours and the steps of their smoothed edges; more are not seen. */
const mostColours = 64

/** `rgba` holds four bytes a pixel, row by row (PNG, ISO/IEC 15948). */
export function palettePng(rgba: Uint8Array, width: number, height: number): Buffer {
  const palette = coloursOf(rgba)
  const nearest = new Map<number, number>()
  const rows = Buffer.alloc((width + 1) * height)
  for (let pixel = 0; pixel < width * height; pixel += 1) {
    const colour = colourAt(rgba, pixel)
    let place = nearest.get(colour)
    if (place === undefined) {
      place = nearestTo(colour, palette)
      nearest.set(colour, place)
    }
    // Each row begins with its filter: none.
    rows[pixel + Math.floor(pixel / width) + 1] = place
  }
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head.set([8, 3, 0, 0, 0], 8)
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', head),
    chunk('PLTE', Buffer.from(palette.flatMap((colour) => bytesOf(colour).slice(0, 3)))),
    chunk('tRNS', Buffer.from(palette.map((colour) => bytesOf(colour)[3] ?? 255))),
    chunk('IDAT', deflateSync(rows, { level: 9, memLevel: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function coloursOf(rgba: Uint8Array): readonly number[] {
  const counts = new Map<number, number>()
  for (let pixel = 0; pixel < rgba.length / 4; pixel += 1) {
    const colour = colourAt(rgba, pixel)
    counts.set(colour, (counts.get(colour) ?? 0) + 1)
  }
  const often = [...counts].sort(([, a], [, b]) => b - a).map(([colour]) => colour)
  return often.slice(0, mostColours)
}

function nearestTo(colour: number, palette: readonly number[]): number {
  const wanted = bytesOf(colour)
  const distances = palette.map((each) =>
    bytesOf(each).reduce((sum, byte, index) => sum + (byte - (wanted[index] ?? 0)) ** 2, 0),
  )
  return distances.indexOf(Math.min(...distances))
}

const colourAt = (rgba: Uint8Array, pixel: number): number =>
  Buffer.from(rgba.buffer, rgba.byteOffset + pixel * 4, 4).readUInt32BE()

const bytesOf = (colour: number): readonly number[] => [24, 16, 8, 0].map((shift) => (colour >>> shift) & 255)

function chunk(name: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data])
  const framed = Buffer.alloc(named.length + 8)
  framed.writeUInt32BE(data.length, 0)
  framed.set(named, 4)
  framed.writeUInt32BE(crc32(named), named.length + 4)
  return framed
}
