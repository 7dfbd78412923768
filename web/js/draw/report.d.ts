// The part of core/report.go that is drawn. All numbers in SI.

export interface Value {
  v: number;
  kind?: string;
  low?: number | null;
  high?: number | null;
  origin?: string;
  trace?: string;
  as?: string;
  diff?: number | null;
  same?: boolean;
}

export interface LayerReport {
  id: string;
  board: string;
  short: string;
  nominal: string;
  kind: string;
  density: number;
  there?: boolean;
  join?: string;
  thickness: Value | null;
  mass?: Value | null;
  weight?: Value | null;
  price?: Value | null;
  sheet?: string;
  screw?: Value | null;
  screwMax?: Value | null;
  wood?: boolean;
  fireRated?: boolean;
}

export interface LeafReport {
  mass?: Value | null;
  thickness: Value | null;
  there?: boolean;
  layers: LayerReport[];
}

export interface HeldReport {
  fixing: string;
  kind: string;
  name?: string;
  standOff: Value | null;
  rows?: Value | null;
  along?: Value | null;
  rating?: Value | null;
}

export interface GapReport {
  id: string;
  depth: Value | null;
  frame: string;
  frameKind: string;
  frameName?: string;
  frameDepth: Value | null;
  frameWidth: Value | null;
  spacing?: Value | null;
  fill: string;
  fillName?: string;
  fillDepth: Value | null;
  near: HeldReport;
  far: HeldReport;
  there?: boolean;
  fillThere?: boolean;
}

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
  load: string;
  c: number;
  ctr: number;
}

export interface Sentence {
  code: string;
  args?: Record<string, number>;
  text?: Record<string, string>;
  edit?: string;
}

export interface Caution {
  code: string;
  [part: string]: unknown;
}

export interface Dip {
  hz: number;
  leaf: number;
  layers: number[];
  short: string;
  kind: string;
  both: boolean;
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
  spread: { rating: number; bass: number; family: string; tests: number; near: boolean };
  resonances: number[];
  dips: Dip[];
  decides: number;
  eightRule?: boolean;
  sentences: Sentence[];
}

export interface RowReport {
  id: string;
  is: string;
  layers: LayerReport[];
  figures: Figures;
  overMass: boolean;
  overClip: boolean;
  cautions: Caution[];
}

export interface Verdict {
  answer: string;
  parts: Sentence[];
  mend?: Sentence | null;
}

export interface LoadReport {
  leaf: number;
  area: Value | null;
  share: Value | null;
  state: string;
}

export interface Report {
  surface: string;
  buildUp?: string;
  leaf: number;
  ratingIs: string;
  currency: string;
  area?: Value | null;
  yours: Figures;
  reference: Figures;
  refLayers: LayerReport[];
  isReference?: boolean;
  leaves: LeafReport[];
  gaps: GapReport[];
  load?: LoadReport | null;
  sound?: SoundReport | null;
  rows?: RowReport[] | null;
  picks?: { closest: string; cheapest: string; best: string } | null;
  verdicts: Record<string, Verdict>;
  cautions: Caution[];
}

export interface PlanSurface {
  id: string;
  name?: string;
  kind?: string;
  beyond?: string;
}

export interface PlanDoc {
  units?: string;
  region?: string;
  surfaces?: PlanSurface[];
}
