import { encode } from 'uqr'

/**
 * A text as a QR code: one path in units of its modules, dark on whatever it is laid upon, run by run, since a square a
 * module would show seams in print. `border`: white modules on each side; ISO/IEC 18004 asks for four.
 */
export function qrPath(text: string, border = 4): { readonly d: string; readonly size: number } {
  const { data, size } = encode(text, { ecc: 'M', border })
  const d = data
    .flatMap((row, y) => {
      const runs: string[] = []
      for (let x = 0; x < row.length; x++) {
        const from = x
        while (row[x]) x++
        if (x > from) runs.push(`M${from} ${y}h${x - from}v1H${from}z`)
      }
      return runs
    })
    .join('')
  return { d, size }
}
