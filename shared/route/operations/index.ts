import type { RouteContext } from '../context.ts'
import type { OperationDraft } from '../operation.ts'
import { beads } from './bead.ts'
import { blend } from './blend.ts'
import { bores } from './bore.ts'
import { cavettos } from './cavetto.ts'
import { centres } from './centres.ts'
import { checkSet } from './check-set.ts'
import { corners } from './corners.ts'
import { coves } from './cove.ts'
import { crosscut } from './crosscut.ts'
import { curves } from './curve.ts'
import { sawnTenons } from './cut-tenon.ts'
import { dry } from './dry.ts'
import { ends } from './end.ts'
import { faceLayers } from './face-layers.ts'
import { finishOffLathe } from './finish.ts'
import { finishOnLathe } from './finish-on-lathe.ts'
import { glue } from './glue.ts'
import { jamFaces } from './jam-face.ts'
import { jointsRound } from './joint-round.ts'
import { journal } from './journal.ts'
import { label } from './label.ts'
import { mortises } from './mortise.ts'
import { mount } from './mount.ts'
import { nubs } from './nub.ts'
import { ogees } from './ogee.ts'
import { ovolos } from './ovolo.ts'
import { pack } from './pack.ts'
import { pareEnds } from './pare-ends.ts'
import { part } from './part.ts'
import { plane } from './plane.ts'
import { planeBlank } from './plane-blank.ts'
import { planeDried } from './plane-dried.ts'
import { planeSquares } from './plane-square.ts'
import { remount } from './remount.ts'
import { restStrips } from './rest-strips.ts'
import { returned } from './return.ts'
import { reversed } from './reverse.ts'
import { rip } from './rip.ts'
import { rough } from './rough.ts'
import { sand } from './sand.ts'
import { sandSquares } from './sand-squares.ts'
import { shoulders } from './shoulder.ts'
import { size } from './size.ts'
import { split } from './split.ts'
import { squareEndsCut } from './square-ends.ts'
import { stepFaces } from './step-face.ts'
import { storyStick } from './story-stick.ts'
import { straights } from './straight.ts'
import { strikeShoulders } from './strike-shoulders.ts'
import { tapers } from './taper.ts'
import { tenons } from './tenon.ts'
import { trueUp } from './true-up.ts'

type Maker = (context: RouteContext) => OperationDraft[]

/** Every kind of operation; each looks at the job and says what there is of it to do. */
export const makers: Maker[] = [
  rip,
  restStrips,
  plane,
  crosscut,
  faceLayers,
  glue,
  planeBlank,
  corners,
  planeSquares,
  squareEndsCut,
  mortises,
  bores,
  sawnTenons,
  strikeShoulders,
  centres,
  mount,
  shoulders,
  rough,
  label,
  journal,
  storyStick,
  size,
  straights,
  stepFaces,
  beads,
  coves,
  ovolos,
  cavettos,
  ogees,
  curves,
  tapers,
  tenons,
  sand,
  blend,
  ends,
  sandSquares,
  checkSet,
  returned,
  finishOnLathe,
  jointsRound,
  part,
  reversed,
  jamFaces,
  pareEnds,
  nubs,
  split,
  finishOffLathe,
  pack,
]

/** What comes between two mountings, where all are roughed before any is finished. */
export const betweenMountings: Maker[] = [dry, planeDried, remount, trueUp]
