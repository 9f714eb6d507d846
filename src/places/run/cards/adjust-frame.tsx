import './adjust.css'
import type { ComponentChildren } from 'preact'
import type { KindOf } from '../../../batch/step'
import { askOf } from '../../../batch/wording'
import { Button } from '../../../parts/button'
import { FactButton } from '../../../parts/chips'
import { hazardIcon } from './hazard-icon'
import { type Primary, ProcessLayout } from './layout'
import type { AdjustTools } from './use-adjust'

interface AdjustFrameProps {
  step: KindOf<'adjust'>
  tools: AdjustTools
  children: ComponentChildren
  side: ComponentChildren
  pad?: boolean
  why?: ComponentChildren
  acts: ComponentChildren
  primary: Primary
}

/** What every card of an adjustment has round it: what goes in and to which window, its caution, the lot in use. */
export function AdjustFrame({ step, tools, pad = false, ...rest }: AdjustFrameProps) {
  const { run, state, material, lot } = tools
  return (
    <ProcessLayout
      {...rest}
      pad={pad}
      chart={!pad}
      under={
        pad
          ? `${material?.name ?? ''}, to ${askOf(step, state.header)}`
          : [material?.name, lot && `lot ${lot.code}`].filter(Boolean).join(', ')
      }
      caution={material?.hazards?.caution}
      cautionIcon={hazardIcon(material?.hazards?.kind)}
      gates={run.gates.value}
      fact={
        pad &&
        lot && (
          <FactButton
            small={material?.name ?? 'lot'}
            bold={lot.code}
            onPress={() => {
              run.sheet.value = { name: 'lot' }
            }}
          />
        )
      }
    />
  )
}

export function BackAct({ tools }: { tools: AdjustTools }) {
  return <Button icon="arrow-left" label="Back to the curve" onPress={() => tools.show('overview')} />
}

/** A timer for the stirring in; several may run. */
export function WaitAct({ step, tools, label }: { step: KindOf<'adjust'>; tools: AdjustTools; label: string }) {
  const minutes = step.waitMinutes
  if (minutes === undefined) return null
  return (
    <Button
      icon="hourglass"
      label={`Wait ${minutes} min`}
      onPress={() => void tools.run.act({ do: 'start-timer', label, minutes })}
    />
  )
}
