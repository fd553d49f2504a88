// Where each quantity stands in the packed series of the coarser pass. What a turn of an inner loop reads lies side by
// side in one array, so that few arrays have to be kept at hand: with an array a quantity the loops took a fifth longer.
// Worked figure: the demand of row 3 of 12 in week 5 with no pad is at ((0 + 5) x 12 + 3) x SLIPS + DEMAND = 693.

/** Of series that slip with an account, by week and row, the week counted without its slip. */
export const SLIPS = 11;
/** Units wanted, before season and promotions; and those that the ramp still withholds. */
export const DEMAND = 0;
export const WITHHELD = 1;
/** Fills that can ship in the week, and how much of them is free. */
export const FILL = 2;
export const FILL_FREE = 3;
export const FILL_TARGET = 4;
/** Demand that orders look ahead to, and a depot's beside its stores'. */
export const AHEAD = 5;
export const DEPOT_AHEAD = 6;
/** What rounding to full cases a door leaves unordered. */
export const SLACK = 7;
/** Share of the shelf that stays when doors close; 1 where none do. */
export const STAYS = 8;
/** Share settled in a week of reviews of what is held under guarantee; share of what ships that is held. */
export const REVIEW = 9;
export const HELD_SHARE = 10;

/** Of series by week and row that no slip moves. */
export const FIXED = 5;
/** Season times promotions, and its mean over the weeks an order looks ahead. */
export const CALENDAR = 0;
export const CALENDAR_AHEAD = 1;
export const PRICE = 2;
export const CLAIM_PER_SOLD = 3;
/** 1 in weeks stores order, else 0. */
export const ORDERS = 4;

/** Of an account's sums by week, counted without its slip: paid at once, taken off remittances, doors of its waves. */
export const SUMS = 3;
export const PAID_OUT = 0;
export const CLAIMED = 1;
export const DOORS_OPEN = 2;

/** Of a row's terms, the same in every draw and week. */
export const TERMS = 13;
export const OPENING_SHELF = 0;
export const CASE_UNITS = 1;
/** Part of an invoice that is paid early, and what a discount leaves of it. */
export const EARLY_SHARE = 2;
export const EARLY_KEPT = 3;
/** Parts of an invoice that never come in, or come back out: deductions and bad debt, returns, broker and royalty. */
export const DEDUCTED = 4;
export const RETURNED = 5;
export const SELLING = 6;
/** VAT on top of the invoice, as a share of it. */
export const VAT = 7;
export const SHIP_COST = 8;
/** 1 for goods invoiced when scanned. */
export const ON_SCAN = 9;
/** Share of what arrives that stays (ordinary returns don't); and of what reviews send back, what we sell again. */
export const STAYED = 10;
export const RESOLD = 11;
export const CLAIM_LAG = 12;

/** Of a row's state in a draw. */
export const STATE = 10;
/** For the whole draw: doors and demand as factors, the part of an invoice that comes in. */
export const DOORS = 0;
export const WANT = 1;
export const KEPT = 2;
/** From week to week. */
export const SHELF = 3;
export const ON_THE_WAY = 4;
export const OPEN = 5;
export const FREE_LEFT = 6;
export const HELD = 7;
/** Of the week: shipped, and of it paid for. */
export const SHIPPED = 8;
export const PAID = 9;
