import { crc32, deflateSync } from 'node:zlib'

/** A grey PNG; `shadeAt` gives each pixel, 0 black to 255 white. */
export function pngOf(width: number, height: number, shadeAt: (x: number, y: number) => number): Buffer {
  const rows = Buffer.alloc((width + 1) * height)
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) rows[y * (width + 1) + 1 + x] = shadeAt(x, y) & 255
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head.set([8, 0, 0, 0, 0], 8)
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data])
  const length = Buffer.alloc(4)
  length.writeUInt32BE(data.length)
  const check = Buffer.alloc(4)
  check.writeUInt32BE(crc32(body))
  return Buffer.concat([length, body, check])
}
