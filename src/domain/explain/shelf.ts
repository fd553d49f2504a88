// The rungs from our list price to the tag. Which of them is typed and which gives way decides what leads to what, so
// that following the lines always ends at something typed and never runs in a circle.
// Worked figure: shelf 4.99, chain at 42 %: 4.99 − 2.0958 = 2.8942, our list price.
import type { HandResult } from '../ladder/types.ts';
import { dec, round4, ZERO } from '../money/decimal.ts';
import { kept } from '../money/kept.ts';
import { isPassedOn, listingKey, type Place, stepKey } from './place.ts';
import type { ExplanationLine } from './types.ts';
import { type Draft, exactPercent, exactPrice, part, type Scene, sumFormula, typed } from './write.ts';

export function shelfFigure(scene: Scene, place: Place): Draft {
  const { ladder, listing, words } = place;
  const lines =
    listing.shelf.by === 'price'
      ? typedShelf(scene, place, kept(listing.shelf.amount))
      : [
          part(scene, ladder.shelfBeforeTax, {
            label: 'Shelf price before tax',
            explains: listingKey(place, 'shelfBeforeTax'),
          }),
          ...taxLines(scene, place),
        ];
  return {
    title: `Shelf price, ${words}`,
    value: scene.say.price(ladder.shelf),
    exact: ladder.shelf.toFixed(),
    meaning: 'What the shopper reads on the tag, tax in it where the market shows it so.',
    formula: sumFormula(scene, lines, ladder.shelf),
    lines,
    caution: missCaution(place, 'shelf'),
  };
}

function typedShelf(scene: Scene, place: Place, amount: ReturnType<typeof dec>): ExplanationLine[] {
  const { ladder, path } = place;
  const asTyped = typed(scene, `${path}/shelf/amount`, part(scene, amount, { label: 'Shelf price' }));
  const moved = ladder.shelf.minus(amount);
  return moved.isZero() ? [asTyped] : [asTyped, pointLine(scene, place, moved)];
}

function pointLine(scene: Scene, { account }: Place, moved: ReturnType<typeof dec>): ExplanationLine {
  const endings = account.pricePoints?.endings.join(', ') ?? '';
  const base = part(scene, moved, { label: 'To a price point', reason: `Tags here end in ${endings}` });
  return typed(scene, `accounts/${account.id}/pricePoints`, base);
}

function taxLines(scene: Scene, place: Place): ExplanationLine[] {
  const { tax } = place.ladder;
  if (tax.isZero()) return [];
  return [part(scene, tax, { label: 'Tax', owner: 'tax', explains: listingKey(place, 'tax') })];
}

export function taxFigure(scene: Scene, place: Place): Draft {
  const { ladder, listing } = place;
  const { rate, shown } = scene.plan.shelfTax;
  const percent = exactPercent(scene, dec(rate));
  const [shelf, before] = [exactPrice(scene, ladder.shelf), exactPrice(scene, ladder.shelfBeforeTax)];
  const upwards = listing.shelf.by === 'solved';
  const base = part(scene, upwards ? ladder.shelfBeforeTax : ladder.shelf, {
    label: upwards ? 'Shelf price before tax' : 'Shelf price',
    explains: listingKey(place, upwards ? 'shelfBeforeTax' : 'shelf'),
  });
  const inTag = upwards ? `${shelf} − ${before}` : `${shelf} − ${shelf} ÷ (1 + ${percent})`;
  return {
    title: `Tax, ${place.words}`,
    value: scene.say.price(ladder.tax),
    exact: ladder.tax.toFixed(),
    meaning: 'The tax inside the price on the tag; it is nobody’s margin.',
    formula:
      shown === 'atTill'
        ? 'added at the till, none in the tag'
        : `${inTag} = ${exactPrice(scene, ladder.tax)}`,
    lines: [
      typed(scene, 'shelfTax/rate', { label: 'Tax rate', value: percent, owner: 'tax' }),
      { ...base, adds: null },
    ],
    caution: null,
  };
}

export function shelfBeforeTaxFigure(scene: Scene, place: Place): Draft {
  const { ladder, listing } = place;
  const lines =
    listing.shelf.by === 'price'
      ? [
          part(scene, ladder.shelf, { label: 'Shelf price', explains: listingKey(place, 'shelf') }),
          ...taxLines(scene, place).map((each) => ({ ...each, ...part(scene, ladder.tax.negated(), each) })),
        ]
      : [...firstPayLines(scene, place), ...ladder.hands.map((hand) => handPart(scene, place, hand, 1))];
  return {
    title: `Shelf price before tax, ${place.words}`,
    value: scene.say.price(ladder.shelfBeforeTax),
    exact: ladder.shelfBeforeTax.toFixed(),
    meaning: 'The shelf price without the tax in it: margins are always reckoned on this.',
    formula: sumFormula(scene, lines, ladder.shelfBeforeTax),
    lines,
    caution: null,
  };
}

/** What the first hand pays: our list price less what is passed on. */
function firstPayLines(scene: Scene, place: Place): ExplanationLine[] {
  const { ladder } = place;
  return [
    part(scene, ladder.list, { label: 'List price', owner: 'ours', explains: listingKey(place, 'list') }),
    ...passedOn(scene, place, -1),
  ];
}

function passedOn(scene: Scene, place: Place, sign: 1 | -1): ExplanationLine[] {
  return place.ladder.steps
    .filter(({ stage, id }) => stage === 'offInvoice' && isPassedOn(place, id))
    .map((step) =>
      part(scene, step.amount.times(sign), {
        label: `${step.label}, passed on`,
        reason: step.reason,
        owner: step.owner,
        explains: stepKey(place, step.id),
      }),
    );
}

function passedTerms(scene: Scene, { account }: Place, each: ExplanationLine): ExplanationLine {
  const id = each.explains?.of === 'step' ? each.explains.stepId : '';
  return typed(scene, `accounts/${account.id}/allowances/${id}`, { ...each, explains: null });
}

function handPart(scene: Scene, place: Place, hand: HandResult, sign: 1 | -1): ExplanationLine {
  return part(scene, hand.keeps.times(sign), {
    label: `${hand.name} keeps`,
    reason: `${exactPercent(scene, hand.marginRate)} of what it sells at`,
    owner: hand.owner,
    explains: { of: 'hand', accountId: place.account.id, itemId: place.item.id, handId: hand.id },
  });
}

export function listFigure(scene: Scene, place: Place): Draft {
  const { ladder, listing } = place;
  const lines = listing.list.by === 'solved' ? listFromShelf(scene, place) : listAsSaid(scene, place);
  return {
    title: `List price, ${place.words}`,
    value: scene.say.price(ladder.list),
    exact: ladder.list.toFixed(),
    meaning: 'Our price to the first hand before any allowance.',
    formula: sumFormula(scene, lines, ladder.list),
    lines,
    caution: missCaution(place, 'list'),
  };
}

function listFromShelf(scene: Scene, place: Place): ExplanationLine[] {
  const { ladder } = place;
  const hands = [...ladder.hands].reverse().map((hand) => handPart(scene, place, hand, -1));
  return [
    part(scene, ladder.shelfBeforeTax, {
      label: 'Shelf price before tax',
      explains: listingKey(place, 'shelfBeforeTax'),
    }),
    ...hands,
    // solved for, the list price leads down to their terms: their amounts lead back to it
    ...passedOn(scene, place, 1).map((each) => passedTerms(scene, place, each)),
  ];
}

/** Typed, or a margin on landed cost; a price point that is ours to absorb moves it. */
function listAsSaid(scene: Scene, place: Place): ExplanationLine[] {
  const { ladder, listing, path } = place;
  const { list } = listing;
  if (list.by === 'solved') throw new Error('a solved list price is made from the shelf');
  const landed = ladder.landed.unit;
  const said = list.by === 'price' ? kept(list.amount) : round4(landed.div(dec(1).minus(list.rate)));
  const moved = ladder.list.minus(said);
  const atPoint = moved.isZero() ? [] : [pointLine(scene, place, moved)];
  if (list.by === 'price') {
    const price = part(scene, said, { label: 'List price', owner: 'ours' });
    return [typed(scene, `${path}/list/amount`, price), ...atPoint];
  }
  const margin = part(scene, said.minus(landed), {
    label: 'Our margin',
    reason: `${exactPercent(scene, dec(list.rate))} of the list price`,
    owner: 'ours',
  });
  return [
    part(scene, landed, { label: 'Landed cost', owner: 'atRisk', explains: listingKey(place, 'landed') }),
    typed(scene, `${path}/list/rate`, margin),
    ...atPoint,
  ];
}

function missCaution({ ladder }: Place, rung: string): string | null {
  if (ladder.solvedRung !== rung || ladder.miss.eq(ZERO)) return null;
  return 'Prices step by 0.0001: this one was moved to the next step in our favour.';
}
