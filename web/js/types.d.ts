// What goes between page and core, as core/plan/plan.go, core/report.go and
// core/call.go write it. All figures are SI; a Quantity is text as typed.

export type Quantity = string;
export type Units = 'us' | 'si';
export type Region = 'US' | 'CA' | 'UK' | 'EU' | 'AU';

export interface Plan {
  format: number;
  table: number;
  name: string;
  region: Region;
  units: Units;
  prices?: '' | 'demo';
  surfaces: Surface[];
  buildUps: BuildUp[];
  shelf?: Shelf[];
  waste?: Quantity;
  /** what plays, and its level in the room, dBA as a bare number */
  source?: string;
  level?: Quantity;
  /** what plays beside it */
  also?: Playing[];
  room?: Room;
  spaces?: Space[];
  measured?: Measured[];
  buying?: Buying;
  notes?: string;
}

export interface Room {
  length?: Quantity;
  width?: Quantity;
  height?: Quantity;
  soft?: Soft;
  people?: Quantity;
  minutes?: Quantity;
  watts?: Quantity;
  air?: Quantity;
  fuel?: boolean;
}

export type Soft = '' | 'bare' | 'soft';

export interface Playing {
  source: string;
  level?: Quantity;
}

/** what lies beyond the surfaces whose beyond is its name */
export interface Space {
  name: string;
  area?: Quantity;
  height?: Quantity;
  soft?: Soft;
  outdoors?: boolean;
  background?: Quantity;
  noise?: Playing[];
}

export interface Opening {
  id: string;
  kind: string;
  seal?: string;
  width?: Quantity;
  height?: Quantity;
  count?: Quantity;
  x?: Quantity;
  y?: Quantity;
  crack?: Quantity;
  run?: Quantity;
  rating?: Quantity;
  octaves?: Quantity[];
  there?: boolean;
}

export interface Hung {
  id: string;
  name?: string;
  x: Quantity;
  y: Quantity;
  mass: Quantity;
}

export interface Joists {
  span?: Quantity;
  grade?: string;
  /** what the joists carry: '' a floor, attic, stored, truss, slab */
  above?: string;
  dead?: Quantity;
}

export interface Measured {
  beyond: string;
  after?: boolean;
  inA?: Quantity;
  inC?: Quantity;
  outA?: Quantity;
  outC?: Quantity;
  in?: Quantity[];
  out?: Quantity[];
}

export interface Buying {
  tax?: Quantity;
  contingency?: Quantity;
  budget?: Quantity;
  payload?: Quantity;
  roof?: Quantity;
  people?: Quantity;
  doorWidth?: Quantity;
  doorHeight?: Quantity;
  corridor?: Quantity;
  beyond?: Quantity;
  stair?: boolean;
  costs?: { item: string; price: Quantity }[];
}

export interface Surface {
  id: string;
  name: string;
  kind: 'wall' | 'ceiling' | 'floor';
  width?: Quantity;
  height?: Quantity;
  area?: Quantity;
  buildUp: string;
  beyond?: string;
  /** who is beyond */
  listener?: string;
  garage?: boolean;
  side?: number;
  openings?: Opening[];
  flank?: string;
  flankLoss?: Quantity;
  hung?: Hung[];
  /** clips added to the grid's */
  clips?: { x: Quantity; y: Quantity }[];
  joists?: Joists;
}

export interface BuildUp {
  id: string;
  name?: string;
  leaves: Leaf[];
  gaps?: Gap[];
  compare: Compare;
}

export interface Leaf {
  layers: Layer[];
}

export type Join = '' | 'glue' | 'film';

export interface Layer {
  id: string;
  board: string;
  there?: boolean;
  join?: Join;
}

export interface Gap {
  id: string;
  frame: string;
  depth?: Quantity;
  spacing?: Quantity;
  fill?: string;
  fillDepth?: Quantity;
  near: Held;
  far: Held;
  there?: boolean;
  fillThere?: boolean;
}

export interface Held {
  fixing: string;
  rows?: Quantity;
  along?: Quantity;
  rating?: Quantity;
  extra?: Quantity;
  shorts?: boolean;
  /** between the screws of the boards; nothing: as usual, 12 in or 300 mm or more */
  screws?: Quantity;
  first?: Quantity;
  ends?: Quantity;
  stagger?: boolean;
  /** the rating is the example's, invented */
  example?: boolean;
}

export interface Compare {
  leaf: number;
  reference?: Layer[];
  rows?: Candidate[];
}

export interface Candidate {
  id: string;
  layers: Layer[];
}

export type Per = '' | 'area' | 'pallet' | 'scale';

export interface Shelf {
  board: string;
  per?: Per;
  weight?: Quantity;
  less?: Quantity;
  of?: Quantity;
  price?: Quantity;
  priceArea?: boolean;
  sheet?: Quantity;
  thickness?: Quantity;
  stock?: Quantity;
  plenty?: boolean;
  owned?: Quantity;
}

export interface Want {
  surface?: string;
  sound?: boolean;
  rows?: boolean;
  ladder?: boolean;
  nearest?: boolean;
  /** the whole room: what is heard beyond, by which way */
  room?: boolean;
  /** what the next money does */
  money?: boolean;
  /** an opening's id: what the crack under this door costs */
  opening?: string;
  /** where every clip goes */
  layout?: boolean;
  /** the whole list, by one try of the cut layout */
  list?: boolean;
  try?: number;
  work?: string;
}

export type Origin = 'typed' | 'typical' | 'demo' | 'computed';

export interface Value {
  v: number;
  kind: string;
  low?: number;
  high?: number;
  origin: Origin;
  trace?: string;
  as?: Quantity;
  diff?: number;
  same?: boolean;
}

export type LoadState = 'over' | 'close' | 'holds' | 'under' | 'unrated' | 'none' | '';

export interface Figures {
  mass: Value | null;
  cost: Value | null;
  clip: Value | null;
  clipLoad: Value | null;
  bass: Value | null;
  rating: Value | null;
  built: Value | null;
  thickness: Value | null;
  leafThick: Value | null;
  stack: Value | null;
  stackCost: Value | null;
  load: LoadState;
  c: number;
  ctr: number;
}

export interface Report {
  surface: string;
  buildUp: string;
  leaf: number;
  ratingIs: string;
  currency: string;
  area: Value | null;
  yours: Figures;
  reference: Figures;
  refLayers: LayerReport[];
  isReference: boolean;
  leaves: LeafReport[];
  gaps: GapReport[];
  load?: LoadReport;
  buy: BuyReport;
  sound?: SoundReport;
  rows?: RowReport[];
  ladder?: StepReport[];
  nearest?: NearestReport | null;
  picks?: { closest: string; cheapest: string; best: string };
  verdicts: { [section: string]: Verdict | undefined };
  cautions: Caution[] | null;
  working?: Working;
  house?: import('./types-room.d.ts').House;
  layout?: import('./types-buy.d.ts').LayoutReport;
  list?: import('./types-buy.d.ts').ListReport;
}

export interface LayerReport {
  id: string;
  board: string;
  short: string;
  row?: string;
  brief?: string;
  nominal: string;
  kind: string;
  density: number;
  there: boolean;
  join: Join;
  thickness: Value | null;
  mass: Value | null;
  weight: Value | null;
  price: Value | null;
  sheet: Quantity;
  sheetChoices: Quantity[] | null;
  stock: Value | null;
  plenty: boolean;
  owned: Value | null;
  need: number;
  screw: Value | null;
  screwMax: Value | null;
  screwWhy: string;
  wood: boolean;
  fireRated: boolean;
}

export interface LeafReport {
  mass: Value | null;
  thickness: Value | null;
  there: boolean;
  layers: LayerReport[];
}

export interface HeldReport {
  fixing: string;
  kind: string;
  name: string;
  standOff: Value | null;
  rows: Value | null;
  along: Value | null;
  rating: Value | null;
  extra: Value | null;
  shorts: boolean;
  /** how far apart, where it counts; typical: at least so far */
  screws: Value | null;
}

export interface GapReport {
  id: string;
  depth: Value | null;
  frame: string;
  frameKind: string;
  frameName: string;
  frameDepth: Value | null;
  frameWidth: Value | null;
  spacing: Value | null;
  fill: string;
  fillName: string;
  fillDepth: Value | null;
  near: HeldReport;
  far: HeldReport;
  there: boolean;
  fillThere: boolean;
}

export interface LoadReport {
  leaf: number;
  area: Value | null;
  boards: Value | null;
  channel: Value | null;
  fill: Value | null;
  extra: Value | null;
  own: Value | null;
  onClip: Value | null;
  rating: Value | null;
  share: Value | null;
  state: LoadState;
  holdsRows: Value | null;
  perArea: Value | null;
  count: number;
  added: Value | null;
}

export interface BuyReport {
  lines: BuyLine[] | null;
  mass: Value | null;
  cost: Value | null;
  sheets: number;
  waste: Value | null;
  screws: Value[] | null;
}

export interface BuyLine {
  board: string;
  short: string;
  row?: string;
  brief?: string;
  nominal: string;
  sheet: Quantity;
  need: number;
  owned: number;
  buy: number;
  lacking: number;
  weight: Value | null;
  price: Value | null;
  cost: Value | null;
}

export interface SoundReport {
  hz: number[];
  tl: number[];
  low: number[];
  high: number[];
  ref: number[];
  octaves: { hz: number; tl: number; spread: number; ref: number }[];
  stc: number;
  rw: number;
  c: number;
  ctr: number;
  c50: number;
  ctr50: number;
  oitc: number;
  spread: { rating: number; bass: number; family: string; tests: number; near: boolean; widest?: string };
  resonances: number[] | null;
  dips: { hz: number; leaf: number; layers: number[]; short: string; kind: string; both: boolean }[] | null;
  decides: number;
  eightRule: boolean;
  sentences: Sentence[] | null;
  need?: Need | null;
}

/** The loss needed from what plays to who is beyond; worst is −1 where nothing is short. */
export interface Need {
  source: string;
  level: number;
  listener: string;
  allowed: number;
  octaves: { hz: number; need: number; got: number; short: number }[];
  worst: number;
  floor: boolean;
}

/** One step of the ladder; differences are from the step it is taken from. */
export interface StepReport {
  rung: string;
  where: 'taken' | 'here' | 'open' | string;
  leaf: number;
  board?: string;
  short?: string;
  nominal?: string;
  fill?: string;
  frame?: string;
  fixing?: string;
  depth?: Value | null;
  bass: Value | null;
  rating: Value | null;
  mass: Value | null;
  cost: Value | null;
}

/** The closest measured construction. */
export interface NearestReport {
  id: string;
  source: string;
  table: string;
  description: string;
  tier: string;
  stc: number;
  bass?: number;
  measured?: { hz: number; loss: number }[];
  octaves?: boolean;
  ours: { stc: number; bass: number; tl: number[]; leaves: NearestLayer[][] | null; gaps: NearestGap[] };
  assumed?: string[];
  differences: NearestDifference[];
}

export interface NearestLayer {
  short: string;
  kind: string;
  thickness: number;
  mass: number;
}

export interface NearestGap {
  frame: string;
  frameDepth: number;
  sheet: number;
  spacing: number;
  depth: number;
  fillDepth: number;
  near: string;
  far: string;
  rows: number;
}

export interface NearestDifference {
  what: string;
  leaf: number;
  gap: number;
  yours: number;
  test: number;
  yoursWord?: string;
  testWord?: string;
}

export interface Sentence {
  code: string;
  args?: Record<string, number>;
  text?: Record<string, string>;
  edit?: string;
}

export interface RowReport {
  id: string;
  is: '' | 'reference' | 'yours';
  layers: LayerReport[];
  figures: Figures;
  overMass: boolean;
  overClip: boolean;
  cautions: Caution[] | null;
}

export interface Verdict {
  answer: 'yes' | 'notYet' | 'no' | string;
  parts: Sentence[] | null;
  mend?: Sentence | null;
}

export interface Working {
  trace: string;
  rows: { code: string; form: string; terms: Value[] | null; result: Value }[] | null;
  sources: { code: string; value?: Value | null; source: string }[] | null;
}

/** A caution as core/caution gives it: what, where, and the numbers that set it off. */
export interface Caution {
  code: string;
  args?: Record<string, number>;
  text?: Record<string, string>;
  [more: string]: unknown;
}

export interface Fault {
  code: string;
  surface?: string;
  buildUp?: string;
  leaf: number;
  layer?: string;
  gap?: string;
  board?: string;
  /** an opening, a thing hung, or the name of a space */
  item?: string;
  field: string;
  typed?: string;
  low?: string;
  high?: string;
  mend?: string[];
  words: string;
}

/** One board as the search tells it. */
export interface BoardReport {
  id: string;
  short: string;
  row?: string;
  brief?: string;
  nominal: string;
  name: string;
  kind: string;
  region: string;
  thickness: number;
  mass: number;
  low?: number;
  high?: number;
  weight?: number;
  sheets?: Quantity[];
  fireRated?: boolean;
  wood?: boolean;
  source?: string;
  origin?: string;
  assumed?: string;
}

export interface FrameReport {
  id: string;
  name: string;
  kind: string;
  depth: number;
  width: number;
  spacings?: number[];
}

export interface FillReport {
  id: string;
  name: string;
  depths?: number[];
}

export interface FixingReport {
  id: string;
  name: string;
  kind: string;
  standOff?: number;
  rows?: number;
  along?: number;
}

export interface Catalog {
  frames: FrameReport[];
  fills: FillReport[];
  fixings: FixingReport[];
  sources?: LevelReport[];
  listeners?: LevelReport[];
  noises?: LevelReport[];
  kinds?: import('./types-room.d.ts').Kind[];
  flanks?: import('./types-room.d.ts').FlankKind[];
}

/** A source or a listener with its A-weighted level, dB. */
export interface LevelReport {
  id: string;
  level: number;
  source: string;
}
