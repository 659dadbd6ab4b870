import type { DealingId, OptionId } from '../../core/project/agreement-records.ts'
import type { BuiltItem, BuiltItemId } from '../../core/project/built-records.ts'
import type { HoldId } from '../../core/project/hold-records.ts'
import type { IssuedId } from '../../core/project/issued-records.ts'
import type { RecordOf } from '../../core/project/job.ts'
import type { PhotoId } from '../../core/project/photo-records.ts'
import type { MarkId, PinId } from '../../core/project/progress-records.ts'
import type { CrewMemberId, ProductId } from '../../core/project/shop-records.ts'
import type {
  CeilingOpeningId,
  OpeningId,
  RoomId,
  StoreyId,
  TrimRunId,
  WallId,
} from '../../core/project/sketch-records.ts'
import type {
  ColourId,
  ConditionId,
  ExistingId,
  FinishId,
  KeptItemId,
} from '../../core/project/survey-records.ts'
import type { OpeningKind } from '../../core/project/vocabulary.ts'

/** What an id begins with, and the record it names. */
interface IdOf
  extends Readonly<Record<OpeningKind, OpeningId>>,
    Readonly<Record<Exclude<BuiltItem['kind'], OpeningKind>, BuiltItemId>> {
  readonly storey: StoreyId
  readonly room: RoomId
  readonly wall: WallId
  readonly trim: TrimRunId
  readonly hatch: CeilingOpeningId
  readonly existing: ExistingId
  readonly condition: ConditionId
  readonly photo: PhotoId
  readonly finish: FinishId
  readonly colour: ColourId
  readonly kept: KeptItemId
  readonly product: ProductId
  readonly crew: CrewMemberId
  readonly hold: HoldId
  readonly mark: MarkId
  readonly pin: PinId
  readonly paper: IssuedId
  readonly change: IssuedId
  readonly plan: IssuedId
  readonly option: OptionId
  readonly dealing: DealingId
  readonly receipt: RecordOf<'receipts'>['id']
  readonly cans: RecordOf<'cansUsed'>['id']
}

/** Makes ids; tests bring one that counts. */
export type NewId = <Prefix extends keyof IdOf>(prefix: Prefix) => IdOf[Prefix]

/** A new record id, e.g. `room-3f9c2a1b`. Fresh text names no record yet, so it may become any kind of id. */
export const newId: NewId = (prefix) => freshName(prefix) as IdOf[typeof prefix]

/** A name nothing has yet: what it begins with, and eight random signs. */
export function freshName(prefix: string): string {
  return `${prefix}-${crypto.randomUUID().slice(0, 8)}`
}
