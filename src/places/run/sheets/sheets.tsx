import './sheets.css'
import type { OpenSheet } from '../run-model'
import { AddUnplannedSheet } from './add-unplanned'
import { ChooseLotSheet } from './choose-lot'
import { CloseSheet } from './close'
import { CorrectLotSheet } from './correct-lot'
import { DiscardCupSheet } from './discard-cup'
import { GateSheet } from './gate'
import { HandOverSheet } from './hand-over'
import { LadderSheet } from './ladder-sheet'
import { MoreSheet } from './more'
import { NoteSheet } from './note'
import { PictureSheet } from './picture'
import { AbandonSheet, LeaveShortSheet, ParkSheet, SkipSheet } from './reason-sheets'
import { ScaleUpSheet } from './scale-up'
import { SignSheet } from './sign'
import { SpillSheet } from './spill'
import { StrikeSheet } from './strike'
import { TareSheet } from './tare'

export function SheetFor({ open, onClose }: { open: OpenSheet; onClose: () => void }) {
  switch (open.name) {
    case 'steps':
      return <LadderSheet onClose={onClose} />
    case 'unplanned':
      return <AddUnplannedSheet onClose={onClose} />
    case 'spill':
      return <SpillSheet onClose={onClose} />
    case 'discard-cup':
      return <DiscardCupSheet onClose={onClose} />
    case 'strike':
      return <StrikeSheet entry={open.about ?? ''} onClose={onClose} />
    case 'park':
      return <ParkSheet onClose={onClose} />
    case 'abandon':
      return <AbandonSheet onClose={onClose} />
    case 'hand-over':
      return <HandOverSheet onClose={onClose} />
    case 'lot':
      return <ChooseLotSheet onClose={onClose} />
    case 'correct-lot':
      return <CorrectLotSheet entry={open.about ?? ''} onClose={onClose} />
    case 'more':
      return <MoreSheet onClose={onClose} />
    case 'close':
      return <CloseSheet onClose={onClose} />
    case 'gate':
      return open.gate ? <GateSheet gate={open.gate} onClose={onClose} /> : null
    case 'note':
      return <NoteSheet onClose={onClose} />
    case 'leave-short':
      return <LeaveShortSheet onClose={onClose} />
    case 'skip':
      return <SkipSheet onClose={onClose} />
    case 'tare':
      return <TareSheet vessel={open.about ?? ''} onClose={onClose} />
    case 'scale-up':
      return <ScaleUpSheet onClose={onClose} />
    case 'picture':
      return <PictureSheet onClose={onClose} />
    case 'sign':
      return <SignSheet onClose={onClose} />
  }
}
