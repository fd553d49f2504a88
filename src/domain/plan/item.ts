// One product: what it costs to have one unit at our door, how it is packed, how it is made, what we already hold.
import * as z from 'zod/mini';
import { LOAD_NAMES } from '../pack/loads.ts';
import * as f from './fields.ts';
import { pack } from './pack.ts';
import { itemNumbers } from './readiness.ts';
import { supply } from './supply.ts';

/** How a cost line is stated. `load` is a full trailer or container; `share` takes a rate of the earlier lines it names. */
export const costRule = z.discriminatedUnion(
  'by',
  [
    z.strictObject({ by: z.literal('unit'), amount: f.unitAmount() }),
    z.strictObject({ by: z.literal('case'), amount: f.unitAmount() }),
    z.strictObject({ by: z.literal('pallet'), amount: f.unitAmount() }),
    z.strictObject({ by: z.literal('shipment'), amount: f.sumAmount() }),
    z.strictObject({
      by: z.literal('load'),
      amount: f.sumAmount(),
      load: z.enum(LOAD_NAMES, { error: '"trailer53", "trailerEu", "container20" or "container40"' }),
    }),
    z.strictObject({ by: z.literal('share'), rate: f.factor(), of: z.array(f.id()) }),
  ],
  { error: 'a rule stated by "unit", "case", "pallet", "shipment", "load" or "share"' },
);

/** `goods` is what the supplier invoices; `freight` and `duty` are paid in cash when the goods arrive. */
export const costLine = z.strictObject({
  id: f.id(),
  label: f.name(),
  family: z.enum(['goods', 'freight', 'duty'], { error: '"goods", "freight" or "duty"' }),
  rule: costRule,
});

/** What is held on the first day, valued as the books carry it. */
export const itemOpening = z.strictObject({
  units: f.whole({ least: 0, most: 100_000_000, unit: 'units' }),
  stockAmount: f.sumAmount(),
  onOrder: z.array(
    z.strictObject({
      id: f.id(),
      landsWeek: f.weekIndex(),
      units: f.whole({ least: 1, most: 100_000_000, unit: 'units' }),
      depositPaidAmount: f.sumAmount(),
    }),
  ),
});

export const item = z.strictObject({
  id: f.id(),
  name: f.name(),
  caseUnits: f.whole({ least: 1, most: 10_000, unit: 'units in a case' }),
  palletCases: f.whole({ least: 1, most: 10_000, unit: 'cases on a pallet' }),
  /** Measured sizes; null while not known. */
  pack: z.nullable(pack),
  /** Its numbers for the till and the warehouse; null while it has none. */
  numbers: z.nullable(itemNumbers),
  /** The standard shipment that per-shipment cost lines are divided by. */
  shipmentUnits: f.whole({ least: 1, most: 100_000_000, unit: 'units in a standard shipment' }),
  costLines: z.array(costLine).check(z.minLength(1, { error: 'at least one cost line' })),
  lossRate: f.shareBelowOne(),
  supply,
  opening: itemOpening,
  /** 52 factors by ISO week of the week's first day (week 53 uses 52), or null for none. */
  seasonFactors: z.nullable(
    z.array(f.factor()).check(z.length(52, { error: '52 factors, one an ISO week' })),
  ),
  removals: z.array(
    z.strictObject({
      id: f.id(),
      week: f.weekIndex(),
      units: f.whole({ least: 1, most: 100_000_000, unit: 'units' }),
      reason: z.enum(['samples', 'writeOff'], { error: '"samples" or "writeOff"' }),
    }),
  ),
});
