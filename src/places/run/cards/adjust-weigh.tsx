import type { Check } from '../../../batch/formula'
import type { KindOf } from '../../../batch/step'
import { HeroNumber, StateLine } from '../../../parts/hero'
import type { Micrograms } from '../../../trade/mass'
import { TypedField } from '../typed-field'
import { AdjustFrame, BackAct } from './adjust-frame'
import { adjustRows } from './adjust-rows'
import { NoteAct } from './layout'
import { pouringWords } from './ph-words'
import { ReadingList } from './reading-list'
import type { AdjustTools } from './use-adjust'
import { errorOf } from './use-step'

interface AdjustWeighProps {
  step: KindOf<'adjust'>
  check: Check
  tools: AdjustTools
  /** What was proposed; absent where nothing is. */
  proposedUg?: Micrograms | undefined
}

/** A portion on the balance: what it shows is typed, and goes in. */
export function AdjustWeigh({ step, check, tools, proposedUg }: AdjustWeighProps) {
  const { portion, shown, material, state, format, stepUg } = tools
  const typedUg = portion.kind === 'number' ? portion.value : undefined
  const isOver = typedUg !== undefined && proposedUg !== undefined && typedUg > proposedUg * 1.1 + stepUg
  const pouring = pouringWords(material?.hazards?.kind)
  return (
    <AdjustFrame
      step={step}
      tools={tools}
      pad
      side={
        <>
          <ReadingList
            label={`Last ${check.label} and portion`}
            rows={adjustRows(state, step, check, format, stepUg).slice(-2)}
          />
          <TypedField
            name="portion"
            label="Portion"
            unit="g"
            error={errorOf(portion)}
            placeholder={proposedUg === undefined ? '' : format.mass(proposedUg, stepUg)}
            onEnter={() => void tools.addPortion()}
          />
        </>
      }
      why={pouring ?? 'Small portions: what is in cannot come out.'}
      acts={
        <>
          <BackAct tools={tools} />
          <NoteAct />
        </>
      }
      primary={
        typedUg === undefined
          ? { label: 'Record', sub: 'type what the balance shows', closed: true }
          : {
              label: `Record ${shown(typedUg)}`,
              sub: material?.name,
              icon: 'arrow-right',
              onPress: () => void tools.addPortion(),
            }
      }
    >
      <HeroNumber
        text={tools.text('portion') || (proposedUg === undefined ? '–' : format.mass(proposedUg, stepUg))}
        unit="g"
        size="range"
        empty={typedUg === undefined}
      />
      {proposedUg !== undefined && (
        <StateLine
          state={isOver ? 'over' : 'to-go'}
          text={isOver ? `more than the ${shown(proposedUg)} proposed` : `${shown(proposedUg)} proposed`}
        />
      )}
    </AdjustFrame>
  )
}
