/** Which stage of the work a reading belongs to. */
export type ReadingStage = 'sized' | 'turned' | 'sanded' | 'finished'
export type ReadingKind = 'diameter' | 'position' | 'length' | 'side'
export type Verdict = 'in' | 'over' | 'under'
