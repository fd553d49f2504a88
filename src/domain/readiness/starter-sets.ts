// What usually has to be ready, by the way goods are sold and by kind of product. Common practice, no source: names, lead times
// and order are a first guess to be changed; what the law and a chain ask for, licensed or accredited bodies and the chain
// itself confirm. Worked figure: item set-up takes 5 to 30 working days, most likely 15: a mean of 15.83.
import type { Gate } from '../plan/index.ts';

export const CHANNELS = ['grocery', 'pharmacy', 'gift', 'club', 'distributor'] as const;
export type Channel = (typeof CHANNELS)[number];
export const PRODUCT_KINDS = ['food', 'personalCare', 'toyChild', 'electrical', 'household'] as const;
export type ProductKind = (typeof PRODUCT_KINDS)[number];

export interface Starter {
  /** Unique over all sets. */
  key: string;
  name: string;
  /** Optimistic, likely, pessimistic, in working days. */
  days: readonly [number, number, number];
  /** Keys of starters it waits for, where those are taken too. */
  after: readonly string[];
  before: Gate['before'];
  /** What shows that it is done. */
  evidence: string;
}

type Row = [
  key: string,
  name: string,
  days: readonly [number, number, number],
  before: Gate['before'],
  after: readonly string[],
  evidence: string,
];

const from = (rows: readonly Row[]): Starter[] =>
  rows.map(([key, name, days, before, after, evidence]) => ({ key, name, days, before, after, evidence }));

/** Once for the whole market, whatever is sold. */
export const FOR_ALL: readonly Starter[] = from([
  ['numbers', 'Item and case numbers', [1, 3, 10], 'ordering', [], 'Numbers in the plan, check digits right'],
  ['artwork', 'Artwork of label and case', [5, 10, 25], 'ordering', ['numbers'], 'Proof signed off'],
  ['barcodes', 'Barcodes verified', [2, 5, 10], 'ordering', ['artwork'], 'Report of an accredited check'],
  [
    'insurance',
    'Product liability insurance',
    [3, 8, 20],
    'shipping',
    [],
    'Certificate that names the chain',
  ],
  ['recall', 'Recall plan, tried once', [3, 5, 15], 'shipping', [], 'Plan and record of the trial'],
  [
    'production',
    'Production slot confirmed',
    [2, 5, 15],
    'ordering',
    ['artwork'],
    'Confirmation of the maker',
  ],
  ['funds', 'Money for the fill in the bank', [5, 20, 60], 'ordering', [], 'Statement, or agreement signed'],
]);

const SET_UP: Row[] = [
  ['agreement', 'Supplier agreement signed', [5, 15, 40], 'ordering', [], 'Signed copy'],
  [
    'itemSetup',
    'Items set up at the chain',
    [5, 15, 30],
    'shipping',
    ['agreement', 'numbers'],
    'Items seen in its system',
  ],
  [
    'exchange',
    'Orders and invoices exchanged, tested',
    [5, 15, 40],
    'shipping',
    ['agreement'],
    'Test order answered',
  ],
  [
    'routing',
    'Routing guide read, first delivery booked',
    [2, 5, 10],
    'shipping',
    ['itemSetup'],
    'Booking number',
  ],
];

/** Once for each chain of that kind. */
export const FOR_CHANNEL: Readonly<Record<Channel, readonly Starter[]>> = {
  grocery: from([
    ...SET_UP,
    ['samples', 'Samples to buyer and laboratory', [3, 5, 15], 'ordering', ['agreement'], 'Receipt'],
    [
      'planogram',
      'Place on the shelf plan',
      [10, 20, 60],
      'shelf',
      ['itemSetup'],
      'Shelf plan with our item',
    ],
  ]),
  pharmacy: from([
    ...SET_UP,
    [
      'compliance',
      'Product file read by the chain',
      [10, 20, 45],
      'shipping',
      ['agreement'],
      'Approval in writing',
    ],
    [
      'planogram',
      'Place on the shelf plan',
      [10, 25, 60],
      'shelf',
      ['itemSetup'],
      'Shelf plan with our item',
    ],
  ]),
  gift: from([
    ['agreement', 'First order and terms confirmed', [1, 5, 15], 'ordering', [], 'Order in hand'],
    ['samples', 'Samples for the shop', [2, 4, 10], 'ordering', [], 'Receipt'],
    [
      'displays',
      'Display or shelf talker made',
      [5, 10, 25],
      'shelf',
      ['agreement'],
      'Photograph of the first one',
    ],
  ]),
  club: from([
    ...SET_UP,
    [
      'packAgreed',
      'Club pack and pallet layout agreed',
      [10, 25, 60],
      'ordering',
      ['agreement'],
      'Layout signed off',
    ],
    ['audit', 'Factory audit passed', [10, 30, 80], 'ordering', ['agreement'], 'Audit report'],
    ['roadshow', 'Demonstrations booked', [5, 10, 20], 'shelf', ['itemSetup'], 'Booking'],
  ]),
  distributor: from([
    ...SET_UP,
    ['openOrder', 'Opening order at the depot', [5, 10, 25], 'shipping', ['itemSetup'], 'Order in hand'],
    ['salesKit', 'Sheets and samples for its people', [3, 8, 15], 'shelf', ['artwork'], 'Sent'],
  ]),
};

/** Once for the whole market, for each kind of product sold. */
export const FOR_PRODUCT: Readonly<Record<ProductKind, readonly Starter[]>> = {
  food: from([
    [
      'foodLabel',
      'Label read: ingredients, allergens, nutrition',
      [5, 10, 25],
      'ordering',
      [],
      'Letter of who read it',
    ],
    [
      'foodSafety',
      'Food safety plan and certificate of the maker',
      [5, 20, 60],
      'ordering',
      [],
      'Certificate, in date',
    ],
    ['shelfLife', 'Shelf life tested', [20, 40, 120], 'ordering', [], 'Report of the laboratory'],
  ]),
  personalCare: from([
    ['careSafety', 'Safety assessment of the formula', [10, 20, 50], 'ordering', [], 'Report, signed'],
    [
      'careNotice',
      'Product notified where that is asked for',
      [2, 5, 15],
      'shipping',
      ['careSafety'],
      'Notice number',
    ],
    ['careLabel', 'Label read: ingredients, warnings', [5, 10, 20], 'ordering', [], 'Letter of who read it'],
  ]),
  toyChild: from([
    ['toyTest', 'Tests by an accredited laboratory', [10, 20, 50], 'ordering', [], 'Test reports'],
    ['toyFile', 'Certificate and technical file', [3, 8, 20], 'shipping', ['toyTest'], 'Certificate, signed'],
    ['toyLabel', 'Age grade, warnings, tracking label', [3, 8, 15], 'ordering', [], 'Proof signed off'],
  ]),
  electrical: from([
    ['electricTest', 'Safety and radio tests', [15, 30, 70], 'ordering', [], 'Test reports'],
    [
      'electricMark',
      'Marks, declaration, instructions',
      [5, 10, 25],
      'shipping',
      ['electricTest'],
      'Declaration, signed',
    ],
    [
      'waste',
      'Registered for batteries and old devices',
      [10, 20, 60],
      'shipping',
      [],
      'Registration number',
    ],
  ]),
  household: from([
    ['hazards', 'Classified, safety data sheet written', [5, 15, 40], 'ordering', [], 'Data sheet'],
    [
      'houseLabel',
      'Label read: warnings, contents, disposal',
      [5, 10, 20],
      'ordering',
      ['hazards'],
      'Letter of who read it',
    ],
  ]),
};

/** For a step of capacity or of shifts in the plan. */
export const FOR_CAPACITY: readonly Starter[] = from([
  ['equipment', 'Equipment ordered', [5, 10, 30], 'ordering', [], 'Order confirmed'],
  ['installed', 'Installed and tried', [3, 10, 25], 'ordering', ['equipment'], 'Trial record'],
]);
