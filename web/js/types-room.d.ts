// The whole room as the core tells it: core/house.go, core/money.go and
// core/room/types.go, whose fields travel with a small first letter.

import type { Fault, Value } from './types.d.ts';

export interface House {
  told: Told;
  spaces: string[] | null;
  /** of told.in: the space that each comes from */
  noises: string[] | null;
  faces: FaceReport[] | null;
  faults?: Fault[];
  crack?: CrackReport;
  money?: Money;
}

export interface FaceReport {
  id: string;
  letter: string;
  name: string;
  kind: string;
  beyond: string;
  width: Value | null;
  height: Value | null;
  area: Value | null;
  mass: Value | null;
  rating: Value | null;
  holed: Value | null;
  built: Value | null;
  openings: OpeningReport[] | null;
}

export interface OpeningReport {
  id: string;
  kind: string;
  group: string;
  seal: string;
  x: number;
  y: number;
  width: Value | null;
  height: Value | null;
  count: number;
  placed: boolean;
  crack: Value | null;
  run: Value | null;
  costs: number;
}

export interface CrackReport {
  opening: string;
  points: { width: number; wall: number; bass: number; room: number }[] | null;
}

export interface Told {
  volume: number;
  level: number[];
  levelA: number;
  surfaces: SurfaceTold[] | null;
  paths: Path[] | null;
  out: Heard[] | null;
  in: Heard[] | null;
  inAll: Heard | null;
  air: Air;
  together: Together[] | null;
  shape: Shape;
  measured: Fit[] | null;
}

export interface SurfaceTold {
  id: string;
  area: number;
  share: number;
  bass: number;
  breaks: ('loneWeak' | 'lighter')[] | null;
}

export type Way = 'boards' | 'leaf' | 'crack' | 'hole' | 'flank';

export interface Path {
  surface: number;
  opening: number;
  way: Way;
  space: number;
  area: number;
  share: number;
  bass: number;
  shareThere: number;
  bassThere: number;
  perfect: number;
  perfectBass: number;
  perfectThere: number;
  perfectBassThere: number;
}

export type HeardState = 'notHeard' | 'within' | 'mayOver' | 'over' | 'noTarget';
export type HeardWord = 'notHeard' | 'faint' | 'kickOnly' | 'heard' | 'words' | 'loud';

export interface OctaveHeard {
  hz: number;
  level: number;
  low: number;
  high: number;
  /** under the Schroeder frequency: only the range holds */
  range: boolean;
  peak: number;
  target: number;
  background: number;
  threshold: number;
  over: number;
  need: number;
  state: HeardState;
  /** outside what is known: shown, never judged */
  beyond: boolean;
}

export interface Heard {
  space: number;
  source: string;
  octave: OctaveHeard[];
  a: number;
  c: number;
  spreadA: number;
  spreadC: number;
  nc: number;
  ncOutside: boolean;
  ncBy: number;
  nr: number;
  nrBy: number;
  target: number;
  background: number;
  overA: number;
  state: HeardState;
  worst: number;
  word: HeardWord;
  felt: boolean;
  floorDriven: boolean;
  leansOnFlank: boolean;
  flankUnknown: boolean;
  schroeder: number;
  absorption: number;
  assumed: boolean;
  each: { source: string; a: number; state: HeardState; word: HeardWord; felt: boolean }[] | null;
}

export interface Air {
  start: number;
  end: number;
  steady: number;
  limit: number;
  minutesTo: number;
  given: number;
  want: number;
  ductArea: number;
  ductRound: number;
  ductLoss: number[];
  heat: number;
  riseSealed: number;
  rise: number;
  cooling: number;
  tooLittle: boolean;
  sealed: boolean;
  fuel: boolean;
}

export interface Together {
  hz: number;
  faces: number[] | null;
  boards: string[] | null;
  share: number;
}

export interface Shape {
  known: boolean;
  length: number;
  width: number;
  height: number;
  insideLength: number;
  insideWidth: number;
  insideHeight: number;
  lostFloor: number;
  insideVolume: number;
  heightLeft: number;
  standLeft: number;
  faces: { surface: number; x: number; y: number; width: number; height: number }[] | null;
  unfoldedWidth: number;
  unfoldedHeight: number;
}

export interface Fit {
  space: number;
  after: boolean;
  octaves: boolean;
  got: { what: string; hz: number; measured: number; predicted: number }[] | null;
  residual: number;
  rms: number;
  path: number;
  raised: number;
  rmsAfter: number;
  prior: number;
  reading: number;
  spread: number;
  shift: number;
  unlikely: boolean;
}

export interface Money {
  budget: Value | null;
  worst: string;
  rows: Change[] | null;
  best?: { ids: string[] | null; cost: Value | null; gain: number; bass: number };
  tried: number;
  exact: boolean;
}

export interface Change {
  id: string;
  code: string;
  surface: string;
  faces: string[] | null;
  opening?: string;
  kind?: string;
  text?: Record<string, string>;
  cost: Value | null;
  gain: number;
  bass: number;
  all: number;
  perCost: number;
  mass?: Value;
  thick?: Value;
  clip?: Value;
  why?: string;
  by?: Path;
  args?: Record<string, number>;
}

/** One kind of opening, as core/room/kind.go has it. */
export interface Kind {
  id: string;
  group: string;
  width: number;
  height: number;
  run: number;
  gap: number;
  seals: string[];
  origin: string;
  spread: number;
}

export interface FlankKind {
  id: string;
  rating: number;
  low: number;
  high: number;
  origin: string;
}
