// How an item is made and bought: the first supplier's terms, and what a longer look adds to them (further suppliers,
// a shared line, price breaks, shelf life, a rush order, a foreign currency). A list that is empty, or null, is none.
// Worked figure: a line of 2 shifts of 40 hours, 500 good units an hour, makes 40,000 units a week.
import * as z from 'zod/mini';
import * as f from './fields.ts';

export const capacityStep = z.strictObject({
  id: f.id(),
  fromWeek: f.weekIndex(),
  unitsPerWeek: f.whole({ least: 1, most: 10_000_000, unit: 'units a week' }),
  capitalAmount: f.sumAmount(),
  leadWeeks: f.whole({ least: 0, most: 104, unit: 'weeks' }),
  lifeWeeks: f.whole({ least: 1, most: 1040, unit: 'weeks' }),
});

/** A further supplier, asked when those before it are full within the weeks of cover. */
export const source = z.strictObject({
  id: f.id(),
  name: f.name(),
  leadWeeks: f.whole({ least: 0, most: 104, unit: 'weeks' }),
  minimumOrderUnits: f.whole({ least: 0, most: 10_000_000, unit: 'units' }),
  batchUnits: f.whole({ least: 1, most: 10_000_000, unit: 'units' }),
  /** null: no lid. */
  capacityUnitsPerWeek: z.nullable(f.whole({ least: 1, most: 10_000_000, unit: 'units a week' })),
  /** What a unit costs from there: goods (invoiced), and freight and duty (paid at receipt). */
  goodsAmountPerUnit: f.unitAmount(),
  freightAmountPerUnit: f.unitAmount(),
  depositRate: f.share(),
  supplierDays: f.whole({ least: 0, most: 365, unit: 'days' }),
});

/** The item's place on a line of the business (`business.lines`). */
export const onLine = z.strictObject({
  lineId: f.id(),
  unitsPerHour: f.whole({ least: 1, most: 1_000_000, unit: 'units an hour' }),
  /** Good units of those made. */
  yieldRate: f.share(),
  /** Its fixed share of the line's hours; null: it takes what items before it in the plan leave. */
  hoursShare: z.nullable(f.share()),
});

/** From so many units an order on, the goods price is multiplied by `goodsFactor`. */
export const priceBreak = z.strictObject({
  id: f.id(),
  fromUnits: f.whole({ least: 1, most: 100_000_000, unit: 'units an order' }),
  goodsFactor: f.factor(),
});

/** Weeks it keeps from landing on, and the least that must be left when it reaches a store (or depot). */
export const shelfLife = z.strictObject({
  weeks: f.whole({ least: 1, most: 520, unit: 'weeks' }),
  leastWeeksAtReceipt: f.whole({ least: 0, most: 519, unit: 'weeks' }),
});

/** Rush orders (air freight, overtime): what stock and orders would leave short within their own lead time. */
export const expedite = z.strictObject({
  leadWeeks: f.whole({ least: 0, most: 104, unit: 'weeks' }),
  extraAmountPerUnit: f.unitAmount(),
  /** null: as many as are missing. */
  mostUnitsPerWeek: z.nullable(f.whole({ least: 1, most: 10_000_000, unit: 'units a week' })),
});

/** Goods lines are typed in this currency; one of it costs `rate` of the plan's, on that date. */
export const purchaseCurrency = z.strictObject({
  code: z
    .string({ error: 'a currency code of ISO 4217, like "EUR"' })
    .check(z.regex(/^[A-Z]{3}$/, { error: 'a currency code of ISO 4217, like "EUR"' })),
  rate: f.exchangeRate(),
  rateDate: f.isoDate(),
  /** A shock to try: from that week on orders cost so much more (or, negative, less). */
  shockRate: f.signedShare(),
  shockFromWeek: f.weekIndex(),
});

export const supply = z.strictObject({
  leadWeeks: f.whole({ least: 0, most: 104, unit: 'weeks' }),
  coverWeeks: f.whole({ least: 0, most: 52, unit: 'weeks' }),
  minimumOrderUnits: f.whole({ least: 0, most: 10_000_000, unit: 'units' }),
  batchUnits: f.whole({ least: 1, most: 10_000_000, unit: 'units' }),
  /** null: no lid. */
  capacityUnitsPerWeek: z.nullable(f.whole({ least: 1, most: 10_000_000, unit: 'units a week' })),
  capacitySteps: z.array(capacityStep),
  depositRate: f.share(),
  supplierDays: f.whole({ least: 0, most: 365, unit: 'days' }),
  line: z.nullable(onLine),
  sources: z.array(source).check(z.maxLength(10, { error: 'at most 10 further suppliers' })),
  priceBreaks: z.array(priceBreak).check(z.maxLength(20, { error: 'at most 20 price breaks' })),
  shelfLife: z.nullable(shelfLife),
  expedite: z.nullable(expedite),
  purchaseCurrency: z.nullable(purchaseCurrency),
});

/** A production line (or co-packer's) that items share: hours a week by shifts, with steps. */
export const productionLine = z.strictObject({
  id: f.id(),
  name: f.name(),
  hoursPerShift: f.whole({ least: 1, most: 168, unit: 'hours a shift and week' }),
  shifts: f.whole({ least: 1, most: 21, unit: 'shifts' }),
  steps: z.array(
    z.strictObject({
      id: f.id(),
      fromWeek: f.weekIndex(),
      shifts: f.whole({ least: 1, most: 21, unit: 'shifts' }),
      capitalAmount: f.sumAmount(),
      leadWeeks: f.whole({ least: 0, most: 104, unit: 'weeks' }),
      lifeWeeks: f.whole({ least: 1, most: 1040, unit: 'weeks' }),
    }),
  ),
});
