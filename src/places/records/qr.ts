import { encode } from 'uqr'

/** Modules of white around the code; what it stands on must be white for as much again (ISO/IEC 18004 asks for four). */
const border = 2

/** A QR code as one path in units of its modules, dark on whatever it is laid upon. */
export function qrPath(text: string): { readonly d: string; readonly size: number } {
  const { data, size } = encode(text, { ecc: 'M', border })
  const d = data.flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : ''))).join('')
  return { d, size }
}
