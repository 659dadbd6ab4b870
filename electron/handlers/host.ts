import type { Argument, HostFacts } from '../../core/contract/requests.ts'
import type { Outcome } from '../../core/project/problem.ts'

/** What one host can do that another cannot: windows, dialogs, paper. The rest of the requests is the same everywhere. */
export interface Host {
  readonly facts: Pick<HostFacts, 'host' | 'version' | 'writesPdf'>
  readonly saveDocument: (
    argument: Argument<'saveDocument'>,
  ) => Promise<Outcome<{ readonly path: string | null }>>
  readonly savePdf: (argument: Argument<'savePdf'>) => Promise<Outcome<{ readonly path: string | null }>>
  readonly printDocument: (
    argument: Argument<'printDocument'>,
  ) => Promise<Outcome<{ readonly printed: boolean }>>
}
