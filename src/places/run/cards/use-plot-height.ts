import { useEffect, useState } from 'preact/hooks'

/** The height of a plot on a card: as much as number, reasons and buttons leave it. */
export function usePlotHeight(): number {
  const [height, setHeight] = useState(heightNow)
  useEffect(() => {
    const follow = () => setHeight(heightNow())
    addEventListener('resize', follow)
    return () => removeEventListener('resize', follow)
  }, [])
  return height
}

function heightNow(): number {
  if (innerWidth < 600) return 300
  const isPortrait = innerWidth < 1024 && innerHeight > innerWidth
  return isPortrait ? Math.max(260, innerHeight - 940) : Math.max(260, innerHeight - 312)
}
