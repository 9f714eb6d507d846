import { useEffect, useState } from 'preact/hooks'

/**
 * A milestone for those who listen. The region is mounted empty and filled afterwards, because text that arrives
 * together with its region is not spoken. The same text twice is spoken once.
 */
export const Said = ({ text }: { text: string }) => {
  const [said, setSaid] = useState('')
  useEffect(() => setSaid(text), [text])
  return (
    <span class="visually-hidden" role="status">
      {said}
    </span>
  )
}
