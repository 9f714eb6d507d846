import { useEffect, useState } from 'preact/hooks'

type Forecasts = Pick<typeof import('./forecasts'), 'forecastHere' | 'soonestHere' | 'missedHere'>

/** What tells the time to a temperature; null until it has come. */
export function useForecasts(): Forecasts | null {
  const [forecasts, setForecasts] = useState<Forecasts | null>(null)
  useEffect(() => {
    let here = true
    // What cannot be loaded is the recovery panel's business: it listens for it.
    void import('./forecasts').then(({ forecastHere, soonestHere, missedHere }) => {
      if (here) setForecasts({ forecastHere, soonestHere, missedHere })
    })
    return () => {
      here = false
    }
  }, [])
  return forecasts
}
