/** What is kept to be fitted, what open jobs need of it, and what was done with it. */
import type { Issue } from '../result';

/** Where a thing is kept, which settles what it is counted in: grips in pieces, tape in yards, weight in grams, solvent in millilitres. */
export type Shelf = 'grip' | 'tape' | 'weight' | 'solvent';

/** One thing that is kept. Quantities in the unit of its shelf. */
export interface Stocked {
  readonly shelf: Shelf;
  readonly item: string;
  /** undefined: not counted, so never short. */
  readonly onHand: number | undefined;
  /** It is to be ordered when no more than this is free. */
  readonly reorderAt: number | undefined;
  /** How much one pack holds; undefined: it comes singly. */
  readonly pack: number | undefined;
  /** What one pack costs. */
  readonly packCost: number | undefined;
  readonly supplier: string | undefined;
}

/** How much of one thing a club needs; `club` is blank where it is needed for the job as a whole. */
export interface Need {
  readonly shelf: Shelf;
  readonly item: string;
  readonly club: string;
  readonly quantity: number;
}

export interface JobNeeds {
  readonly job: string;
  /** Day as a workbook counts it; undefined: promised for no day, so it comes last. */
  readonly due: number | undefined;
  /** 1 for the first time it is done, 2 for its first redo and so on: what was used before does not serve again. */
  readonly round: number;
  readonly needs: readonly Need[];
  /** Two-way strips, one for each grip that gets one. */
  readonly twoWayStrips: number;
}

/** `cancelled`: of an order; `sentBack`: to a supplier; `broughtBack`: by a client. */
export type MovementKind =
  | 'reserved'
  | 'released'
  | 'used'
  | 'ordered'
  | 'cancelled'
  | 'arrived'
  | 'sentBack'
  | 'broughtBack'
  | 'writtenOff'
  | 'counted';

/** One row of the ledger. The quantity is above 0, save for what a count added or took away. */
export interface Movement extends Need {
  readonly kind: MovementKind;
  /** Blank for what belongs to no job. */
  readonly job: string;
  /** As in {@link JobNeeds}. */
  readonly round: number;
  /** The order it belongs to: of what was ordered, of what came or was cancelled of it. */
  readonly order?: string | undefined;
  readonly supplier?: string | undefined;
  /** When, as a workbook counts days; undefined on rows that are still to be written. */
  readonly day?: number | undefined;
}

/** One thing of an order, and what became of it. */
export interface OrderedLine {
  readonly shelf: Shelf;
  readonly item: string;
  readonly ordered: number;
  readonly arrived: number;
  readonly cancelled: number;
  /** Ordered, and neither here nor cancelled; never below 0. */
  readonly outstanding: number;
}

/** An order that was placed. */
export interface PlacedOrder {
  readonly order: string;
  /** Blank where the ledger names none. */
  readonly supplier: string;
  /** The first day something was ordered by it. */
  readonly day: number | undefined;
  readonly lines: readonly OrderedLine[];
}

/** What the ledger says of one thing for one club of a job and one round. */
export interface Entry extends Omit<Need, 'quantity'> {
  readonly job: string;
  readonly round: number;
  /** Reserved, and neither released nor used; never below 0. */
  readonly reserved: number;
  /** The same, below 0 where more was used than had been reserved. */
  readonly balance: number;
  readonly used: number;
}

/** How much a job lacks of something. */
export interface Lack {
  readonly job: string;
  readonly due: number | undefined;
  readonly quantity: number;
  /** How much of that is on order: it is waited for, and not short. */
  readonly onOrder: number;
}

/** How one thing stands. */
export interface ItemState {
  readonly shelf: Shelf;
  readonly item: string;
  /** undefined: a job needs it, and no table lists it. */
  readonly stocked: Stocked | undefined;
  readonly onHand: number | undefined;
  /** By any job, also by one that is done or gone. */
  readonly reserved: number;
  /** On hand and not reserved; below 0 where more is reserved than there is. */
  readonly free: number | undefined;
  /** By open jobs, what they have used already left out. */
  readonly needed: number;
  /** On hand once every open job has what it needs; below 0: so much is missing. */
  readonly left: number | undefined;
  /** Ordered, and not here yet. */
  readonly onOrder: number;
  /** Jobs that do not get all, the earliest due first. */
  readonly lacks: readonly Lack[];
  /** No more is left than the reorder point, what is on order counted in. */
  readonly low: boolean;
}

/** Reservations that hold pieces for nobody. */
export interface Stranded {
  readonly job: string;
  /** `gone`: no table lists the job; `done`: it is done; `unneeded`: it is open and needs less. */
  readonly why: 'gone' | 'done' | 'unneeded';
  /** What is reserved in them is what nobody needs. */
  readonly entries: readonly Entry[];
}

export interface StockState {
  /** As the tables list them, then what no table lists. */
  readonly items: readonly ItemState[];
  readonly stranded: readonly Stranded[];
}

export interface OrderLine {
  readonly shelf: Shelf;
  readonly item: string;
  readonly packs: number;
  readonly quantity: number;
  readonly pack: number;
  readonly cost: number | undefined;
  readonly lacks: readonly Lack[];
  readonly left: number;
  readonly onOrder: number;
  readonly reorderAt: number | undefined;
}

export interface SupplierOrder {
  /** Blank where the table names none. */
  readonly supplier: string;
  readonly lines: readonly OrderLine[];
  /** Of the lines whose cost is known. */
  readonly cost: number;
  readonly unpriced: readonly string[];
}

export interface PickLine {
  readonly shelf: Shelf;
  readonly item: string;
  readonly quantity: number;
  readonly jobs: readonly { readonly job: string; readonly quantity: number }[];
}

export interface PickList {
  readonly jobs: readonly { readonly job: string; readonly due: number | undefined }[];
  readonly lines: readonly PickLine[];
  readonly twoWayStrips: number;
}

/** A club whose piece was taken before, when it was called otherwise. */
export interface Renamed {
  readonly was: string;
  readonly now: string;
  readonly shelf: Shelf;
  readonly item: string;
}

/** What taking from stock comes to: rows for the ledger, and what is then on hand. */
export interface Taken {
  readonly movements: readonly Movement[];
  readonly onHand: readonly { readonly stocked: Stocked; readonly onHand: number }[];
  /** Clubs that took their piece under another name. */
  readonly renamed: readonly Renamed[];
}

/** Why stock cannot be taken. */
export interface CannotTake {
  readonly issues: readonly Issue[];
  readonly tooFew: readonly {
    readonly item: string;
    readonly shelf: Shelf;
    readonly onHand: number;
    readonly wanted: number;
  }[];
}
