import type { DeviceVerdict } from '../../app/sign/device-verdict'
import { deviceWords } from './device-words'
import type { PaperProps } from './paper-props'

interface PaperDeviceProps extends Omit<PaperProps, 'say'> {
  /** By entry; what is not in it is being looked at. */
  verdicts: ReadonlyMap<string, DeviceVerdict>
}

/** What tablets signed of this batch by their keys, and whether it fits what stands here. */
export function PaperDevice({ record, format, verdicts }: PaperDeviceProps) {
  const { rows, isUnsigned } = record.device
  if (rows.length === 0 && !isUnsigned) return null
  return (
    <>
      {rows.map((row) => {
        const { text, isUnfit } = deviceWords(row, verdicts.get(row.entry), format)
        return (
          <p key={row.entry} class={isUnfit ? 'paper-outside' : undefined}>
            {text}
          </p>
        )
      })}
      {isUnsigned && (
        <p>
          No tablet signed the end of this batch: the app that ended it had no device key, or the browser could not
          sign.
        </p>
      )}
      {rows.length > 0 && (
        <p class="paper-quiet">A device key tells on which tablet the batch was signed. It does not tell by whom.</p>
      )}
    </>
  )
}
