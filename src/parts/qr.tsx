import './qr.css'
import { qrPath } from './qr-path.ts'

/** A text as a QR code: dark on white whatever the light, or no camera reads it. Fills the width it is given. */
export const Qr = ({ text, label }: { text: string; label: string }) => {
  const { d, size } = qrPath(text)
  return (
    <svg class="qr" role="img" aria-label={label} viewBox={`0 0 ${size} ${size}`} shape-rendering="crispEdges">
      <rect width={size} height={size} class="qr-light" />
      <path d={d} class="qr-dark" />
    </svg>
  )
}
