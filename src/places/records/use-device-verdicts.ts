import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { type DeviceVerdict, verdictsOf } from '../../app/sign/device-verdict'
import type { DeviceRow } from '../../batch/record-device'

const none: ReadonlyMap<string, DeviceVerdict> = new Map()

/** Verdicts on the rows, by entry, once they are told. */
export function useDeviceVerdicts(rows: readonly DeviceRow[]): ReadonlyMap<string, DeviceVerdict> {
  const app = useApp()
  const [found, setFound] = useState(none)
  useEffect(() => {
    let isWanted = true
    void verdictsOf(app, rows).then((verdicts) => {
      if (isWanted) setFound(verdicts)
    })
    return () => {
      isWanted = false
    }
  }, [app, rows])
  return found
}
