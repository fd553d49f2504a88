// The unit series of the weekly pass in words: what each is called and what it means.
// Worked figure: "fillShipped" is "Shipped for openings": a fill is no sale to a shopper.
import type { UnitName } from '../rollout/types.ts';

interface UnitWords {
  name: string;
  meaning: string;
}

export const UNIT_MEANINGS: Record<UnitName, UnitWords> = {
  ordered: { name: 'Units ordered', meaning: 'Units in the purchase orders placed in the week.' },
  rushed: { name: 'Units rushed', meaning: 'Of the units ordered in the week, those in rush orders.' },
  made: { name: 'Units landed', meaning: 'Units that came in from the maker in the week.' },
  shipped: { name: 'Units shipped', meaning: 'Units that left us for the chains in the week.' },
  fillShipped: {
    name: 'Units shipped for openings',
    meaning: 'Of the units shipped, those that fill a shelf for the first time.',
  },
  received: { name: 'Units at stores', meaning: 'Units that reached shelves in the week.' },
  demand: { name: 'Units wanted', meaning: 'Units shoppers would buy in the week, were no shelf empty.' },
  sold: { name: 'Units sold', meaning: 'Units scanned at the till in the week; a fill is no sale.' },
  lost: { name: 'Units lost', meaning: 'Units shoppers wanted in the week and did not find.' },
  returned: { name: 'Units sent back', meaning: 'Units taken off shelves towards us in the week.' },
  gone: {
    name: 'Units gone unsold',
    meaning: 'Units written off, given away, or left in closed doors in the week.',
  },
  ours: { name: 'Units with us', meaning: 'Units in our own stock at the end of the week.' },
  inTransit: { name: 'Units on the way', meaning: 'Units shipped and not yet on a shelf at the week’s end.' },
  atDepot: {
    name: 'Units at depots',
    meaning: 'Units in depots between us and the stores at the week’s end.',
  },
  inStores: { name: 'Units in stores', meaning: 'Units on the shelves at the end of the week.' },
  backlog: { name: 'Units waiting', meaning: 'Units ordered from us that our stock did not reach for.' },
  onOrder: { name: 'Units on order', meaning: 'Units in purchase orders that have not landed yet.' },
};
