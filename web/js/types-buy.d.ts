// What the core tells of a layout of clips, of the list and of the cuts, as
// core/place.go, core/load/types.go and core/takeoff write it. SI throughout.

import type { Caution, Fault, Quantity, Sentence, Value } from './types.d.ts';

export interface Rect {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A rectangle of a cut layout. */
export interface Box {
  x: number;
  y: number;
  w: number;
  h: number;
}

export interface Spot {
  x: number;
  y: number;
  row: number;
  seat: string;
  area: number;
  share: number;
  beam: number;
  load: number;
  of: number;
  state: 'over' | 'close' | 'holds' | 'under' | 'unrated';
  pieces: Rect[] | null;
}

export interface ChannelRow {
  at: number;
  from: number;
  to: number;
  added: boolean;
  clips: number[];
  marks: number[];
  sag: number;
  sagOf: number;
  momentOf: number;
}

export interface Face {
  width: number;
  height: number;
  ceiling: boolean;
  openings: Rect[] | null;
  frame: { spacing: number; first: number; alongX: boolean; ends: boolean; jambs: boolean };
}

export interface Rules {
  rows: number;
  every: number;
  along: number;
  first: number;
  last: number;
  end: number;
  short: number;
  atOpenings: number;
  staggered: boolean;
  even: boolean;
}

export interface Layout {
  alongX: boolean;
  rows: ChannelRow[] | null;
  spots: Spot[] | null;
  boarded: number;
  channel: number;
  weight: number;
  rating: number;
  worst: number;
  least: number;
  mean: number;
  count: { over: number; close: number; holds: number; under: number; unrated: number };
  per: number;
  notes: Caution[] | null;
}

export interface HungSpot {
  id: string;
  name: string;
  x: number;
  y: number;
  mass: Value | null;
}

export interface JoistReport {
  above: string;
  added: number;
  code: number;
  dead: {
    sized: { dead: number; live: number; limit: number; origin: string };
    thereLow: number;
    thereHigh: number;
    leftLow: number;
    leftHigh: number;
    onJoist: number;
    known: boolean;
  };
  limit: number;
  bend?: { moment: number; momentMost: number; shear: number; shearMost: number; sag: number; sagMost: number; of: number; mostDead: number; longest: number };
  cautions: Caution[] | null;
}

export interface LayoutReport {
  /** none where there is a fault, or no clips */
  layout: Layout | null;
  face: Face;
  rules: Rules;
  hung: HungSpot[] | null;
  widest?: { rows: Value | null; along: Value | null; share: Value | null; clips: number; none?: Sentence };
  /** one clip more that would help most */
  mend?: { x: number; y: number; share: Value | null };
  joists?: JoistReport;
  /** of a wall's new frame on the floor */
  line?: Value;
  /** the leaf as a mass on its clips */
  hanging?: { frequency: number; low: number; high: number; halfLoad: number; deflection: number; withAir: number; perArea: number };
  /** how far the channel may run between clips */
  span?: Value;
  fasten: Caution[] | null;
  /** of the screws of each layer of the leaf; field 0: along the edges only */
  spacing?: { field: number; edge: number; rule: string }[];
  /** why there is no layout */
  fault?: Sentence;
  /** of the fields of what hangs and of the joists */
  faults?: Fault[];
}

/** What the takeoff says: a code, what it is about, its numbers. */
export interface TakeoffNote {
  code: string;
  face: string;
  layer: number;
  board: string;
  args: Record<string, number> | null;
}

/** A line of the list. unit is empty for pieces, else m, m2, m3. */
export interface Item {
  code: string;
  of: string;
  size: number;
  amount: number;
  unit: string;
  waste: number;
  pack: number;
  buy: number;
  owned: number;
  price: number;
  priced: boolean;
  cost: number;
  mass: number;
  rule: string;
  args: Record<string, number> | null;
  origin: string;
}

export interface ItemReport {
  key: string;
  item: Item;
  /** of the price */
  origin?: string;
  lacking?: number;
}

export interface BoardName {
  short: string;
  row: string;
  brief: string;
  nominal: string;
  kind: string;
  sheet: Quantity;
}

export interface Step {
  code: string;
  face: string;
  layer: number;
  hold: boolean;
  args: Record<string, number> | null;
}

export interface Trip {
  rows: { of: string; count: number; mass: number }[] | null;
  mass: number;
}

export interface Carried {
  people: number;
  panelLift: boolean;
  too: boolean;
  limit: number;
  index: number;
}

export interface LiftReport {
  board: string;
  mass: Value | null;
  wall: Carried;
  over: Carried;
  above: boolean;
  stack: number;
}

export interface WayReport {
  board: string;
  notes: TakeoffNote[] | null;
  fits?: { width: Value | null; length: Value | null };
  cut: Value | null;
}

export interface Bill {
  goods: number;
  contingency: number;
  beforeTax: number;
  tax: number;
  total: number;
  stillToGet: number;
  unpriced: number;
}

export interface ListReport {
  try: number;
  items: ItemReport[] | null;
  bill: Bill;
  totals: Total[] | null;
  notes: TakeoffNote[] | null;
  mass: Value | null;
  sheets: number;
  trips: Trip[] | null;
  cargo: TakeoffNote[] | null;
  lifts: LiftReport[] | null;
  way: WayReport[] | null;
  forgot: TakeoffNote[] | null;
  steps: Step[] | null;
  faces: CutFace[] | null;
  /** of the fields that the list is made with */
  faults?: Fault[];
  names: Record<string, BoardName> | null;
}

export interface Piece {
  face: string;
  layer: number;
  board: string;
  on: Box;
  holes: Box[] | null;
  sheet: number;
  part: number;
  at: Box;
  turned: boolean;
}

export interface Used {
  board: string;
  no: number;
  owned: boolean;
  width: number;
  length: number;
  pieces: number[] | null;
  left: Box[] | null;
  cuts: number;
}

export interface HungLayer {
  face: string;
  layer: number;
  board: string;
  order: number;
  area: Box;
  upright: boolean;
  pieces: number[] | null;
  joints: number;
  ends: number;
  jointRun: number;
  stagger: number;
  pastLeft: boolean;
  pastRight: boolean;
  pastFoot: boolean;
  pastHead: boolean;
}

export interface Total {
  board: string;
  sheets: number;
  owned: number;
  buy: number;
  bound: number;
  area: number;
  boarded: number;
  left: number;
  cuts: number;
  joints: number;
  ends: number;
  mass: number;
}

export interface Cut {
  try: number;
  pieces: Piece[] | null;
  sheets: Used[] | null;
  hung: HungLayer[] | null;
  totals: Total[] | null;
  notes: TakeoffNote[] | null;
}

/** What a board comes to in one length sold. */
export interface Choice {
  length: number;
  sheets: number;
  buy: number;
  joints: number;
  ends: number;
  cuts: number;
  each: number;
  mass: number;
}

export interface CutFace {
  id: string;
  surface: string;
  leaf: number;
  name: string;
  width: number;
  height: number;
  openings: { id: string; kind: string; rect: Box }[] | null;
  lines: number[] | null;
  upright: boolean;
}

export interface CutReport {
  cut: Cut;
  tries: number;
  faces: CutFace[] | null;
  names: Record<string, BoardName> | null;
  other?: Record<string, Choice[] | null> | null;
}
