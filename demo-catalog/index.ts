// The example plans: what a first start shows, and what the tests run on. Each is a plan file like any exported one and a
// chunk of its own, loaded when it is opened. Every brand, chain and figure in them is invented. Worked figure: the first
// one's deal is paid back 28 weeks after its opening, and its cash runs out in week 26 of the plan.

export interface Demo {
  id: string;
  name: string;
  /** What it teaches, in a sentence; the plan says the same. */
  lesson: string;
  /** The file's JSON, with its envelope, not yet checked. */
  load: () => Promise<unknown>;
}

/** The first is shown at the first start. */
export const DEMOS: readonly Demo[] = [
  {
    id: 'demo-pays-but-runs-dry',
    name: 'Quillmoor hot honey, 180 stores',
    lesson:
      'The deal pays back within its year, and still the cash runs out: slotting and production runs are paid months before the invoices are.',
    load: async () => (await import('./pays-but-runs-dry.json')).default,
  },
  {
    id: 'demo-free-fill-by-distributor',
    name: 'Oddlestane oat crackers, 120 stores by distributor',
    lesson:
      'Free fill through a distributor is billed back at its selling price: two free cases a store cost nearly twice the crackers in them, and turn a deal that holds into a tight one.',
    load: async () => (await import('./free-fill-by-distributor.json')).default,
  },
  {
    id: 'demo-gift-shops-keystone',
    name: 'Wickersedge candles, 34 gift shops',
    lesson:
      'Half of the price before tax is the shop’s, and it still pays: nothing is put down, every candle adds to ours, and the one thin week is when the stock for Christmas is made.',
    load: async () => (await import('./gift-shops-keystone.json')).default,
  },
  {
    id: 'demo-beauty-chain-returns',
    name: 'Saltfernley face balm, 280 pharmacies',
    lesson:
      'A ladder margin of 73 % does not make a deal: goods coming back from a guaranteed sale, chargebacks and displays take more than a year of sales brings.',
    load: async () => (await import('./beauty-chain-returns.json')).default,
  },
  {
    id: 'demo-margin-not-markup',
    name: 'Brightnettle barley tea, 90 stores by a wholesaler',
    lesson:
      'The chain’s 35 % is a margin, not a markup: read as a markup the ladder holds; as the chain means it we keep less than our floor, though the deal itself would pay back.',
    load: async () => (await import('./margin-not-markup.json')).default,
  },
  {
    id: 'demo-third-chain',
    name: 'Brunnhag lemonades, a third chain',
    lesson:
      'The two chains already open carry the third: alone its 260 stores would run the cash dry, beside them it stays above zero, just.',
    load: async () => (await import('./third-chain.json')).default,
  },
  {
    id: 'demo-twelve-chains',
    name: 'Marrowgate relishes, twelve chains in two years',
    lesson:
      'All twelve deals pay back, and cash still runs short in week 39: without the second shift it would not, and 365,000 more units would go unsold; opening one chain ten weeks later mends it at no such price.',
    load: async () => (await import('./twelve-chains.json')).default,
  },
];
