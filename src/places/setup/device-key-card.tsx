import '../../parts/mono.css'
import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../../app/app'
import { useFormat } from '../../app/format'
import { journalledKeys, ownKey } from '../../app/sign/journalled-keys'
import type { JournalledKey } from '../../batch/key-trail'
import { Card } from '../../parts/card'
import { Notice } from '../../parts/notice'
import { type KeysHere, keyLines, keysHereOf } from './device-key-words'

/** The key that this tablet signs ended batches with, to compare a record with. */
export function DeviceKeyCard() {
  const app = useApp()
  const format = useFormat()
  const [here, setHere] = useState<KeysHere | null>(null)
  useEffect(() => {
    let isWanted = true
    const look = async () => {
      const own = await ownKey(await app.deviceKeys())
      const known: readonly JournalledKey[] = await journalledKeys(app.log)
      if (isWanted) setHere(keysHereOf(own, known))
    }
    void look()
    return () => {
      isWanted = false
    }
  }, [app])
  if (here === null) return null
  const { says, missing, more } = keyLines(here, format)
  return (
    <Card labelledBy="setup-key" class="setup-card">
      <h2 id="setup-key">The key of this tablet</h2>
      <p class="setup-says">{says}</p>
      {missing !== null && <Notice kind="caution" title={missing} />}
      {more.map((line) => (
        <p key={line} class="setup-hint">
          {line}
        </p>
      ))}
      <p class="setup-hint">
        It signs a batch when it is closed, and stays in this browser: no file or backup holds it. A record tells
        whether the signature fits. It tells on which tablet a batch was signed, not by whom.
      </p>
    </Card>
  )
}
