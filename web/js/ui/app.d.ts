// What the parts of the page share. main.js makes it; the parts read it and
// call what it can do.

import type { TemplateResult } from 'lit-html';
import type { Edit } from '../edit.js';
import type { History } from '../state.js';
import type { BuildUp, Catalog, Fault, NearestReport, Plan, Region, Report, StepReport, Surface, Units } from '../types.d.ts';
import type { House, Money } from '../types-room.d.ts';
import type { Message } from '../words.js';

export type Section = 'layers' | 'load' | 'sound' | 'heard' | 'swap' | 'buy';

/** A sheet over the section, from the strip's lower edge to the section bar. */
export type Panel =
  | { kind: 'work'; trace: string; key: string }
  | { kind: 'menu' }
  | { kind: 'plans' }
  | { kind: 'about' }
  | { kind: 'send' }
  | { kind: 'needs' }
  | { kind: 'pick'; leaf: number; layer?: string; chosen?: (board: string, name: string) => void; title?: string };

/** What is in a field and is not in the plan, or not in this form. */
export interface Draft {
  text: string;
  fault?: Fault;
  /** the core has not said yet what it means */
  reading?: boolean;
  /** the field was left meanwhile */
  left?: boolean;
}

/** A field for a quantity. */
export interface FieldSpec {
  key: string;
  /** what the core reads: length mass surfaceMass sheet money count area percent */
  what: string;
  label: string;
  /** the quantity as the plan has it, empty if nothing was typed */
  value: string;
  /** what stands there in soft while nothing is typed */
  typical?: string;
  unit: string;
  /** other units the unit button goes through */
  units?: string[];
  /** how the unit is written on the button, if not as it is */
  unitWords?: string;
  set: (quantity: string) => Edit | undefined;
  setUnit?: (unit: string) => void;
  /** whether a fault of the whole plan is about this field */
  mine: (fault: Fault) => boolean;
  /** the field is what is asked for: lit even before it is touched */
  lit?: boolean;
}

export interface Note {
  message: Message;
  grave?: boolean;
  taps: { words: string; act: () => void }[];
}

export interface PlanEntry {
  id: string;
  name: string;
  opened: number;
}

export interface App {
  plan: Plan;
  planId: string;
  history: History;
  /** the last good one */
  report: Report | undefined;
  /** what is worked out once typing rests: of the last plan of this surface it was asked for */
  further: { surface: string; ladder?: StepReport[]; nearest?: NearestReport | null } | undefined;
  /** the whole room, the last good one, and what the next money does there */
  house: House | undefined;
  money: Money | undefined;
  /** the plan that money is of */
  moneyOf: Plan | undefined;
  /** of the plan on screen; the report is then of an earlier one */
  faults: Fault[];
  drafts: Map<string, Draft>;
  fieldUnits: Map<string, string>;
  catalog: Catalog | undefined;
  surfaceId: string;
  surface: Surface;
  /** versions of core, format and table, in words */
  about: string;
  /** what a printed sheet needs beside the report */
  printed:
    | {
        /** list: the list of the whole plan in place of the surface's sheet; clips: their layout beside it; room: the whole room */ what?:
          | 'list'
          | 'clips'
          | 'room'
          | '';
        link?: string;
        qr?: string[];
        reports: Report[];
        house?: House /** the calculation note in place of the sheet */;
        note?: boolean;
      }
    | undefined;
  buildUp: BuildUp;
  units: Units;
  region: Region;
  ctx: { units: Units; currency: string; report?: Report; names: Record<string, string> };
  section: Section;
  selected: string;
  openLeaf: number;
  more: boolean;
  panel: Panel | undefined;
  /** the first minute: a wall nobody has touched yet */
  first: boolean;
  wide: boolean;
  width: number;
  folded: boolean;
  typing: boolean;
  stale: boolean;
  /** the cells whose figures have just changed */
  changed: Set<string>;
  kept: boolean;
  why: string;
  brought: Note | undefined;
  program: Note | undefined;
  /** what was got, by the list's items and steps: how many; kept with the plan in this browser */
  ticks: Map<string, number>;
  plans: PlanEntry[];
  /** what the core gave for the open panel */
  panelData: any;
  offline: boolean;
  theme: string;

  render(): void;
  ask(method: string, args: object, slot?: string): Promise<any>;
  edit(edit: Edit | undefined, field?: string): void;
  undo(): void;
  redo(): void;
  go(section: Section): void;
  goSurface(id: string): void;
  setRegion(region: Region): Promise<void>;
  select(id: string): void;
  open(panel: Panel): void;
  close(): void;
  input(spec: FieldSpec, text: string): void;
  leave(spec: FieldSpec): void;
  mend(spec: FieldSpec, quantity: string): void;
  cycleUnit(spec: FieldSpec): void;
  setTheme(theme: string): void;
  openPlan(id: string): Promise<void>;
  makeRoom(): Promise<void>;
  newPlan(which: 'first' | 'demo', section?: Section): Promise<void>;
  removePlan(id: string): Promise<void>;
  openLink(text: string): Promise<boolean>;
  openText(text: string, name: string): Promise<void>;
  saveFile(): void;
  print(all?: boolean): Promise<void>;
  tick(key: string, amount: number | undefined): void;
  tickAll(pairs: [string, number | undefined][]): void;
  tell(note: Note | undefined): void;
  copy(text: string): Promise<boolean>;
}

export type Part = (app: App) => TemplateResult | TemplateResult[] | symbol | unknown;
