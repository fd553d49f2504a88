// Who gets what of a sale. Money put in with a preference comes first, all such money alike (in proportion where it doesn't
// reach). Non-participating money then takes the larger of its preference and its part; participating money takes both.
// Worked figure: 1,000 put in for 20 %, sold at 3,000: non-participating 1,000 (20 % were 600), participating 1,400.

/** The claim of one owner's shares of one class on a sale. */
export interface Claim {
  shares: number;
  /** What comes first, 0 for plain shares. */
  preference: number;
  participates: boolean;
}

/** What each claim gets of an amount, in order; they add up to it. An amount below 0 gives nobody anything. */
export function sharedOut(claims: readonly Claim[], amount: number): number[] {
  const first = claims.reduce((sum, { preference }) => sum + preference, 0);
  if (amount <= 0) return claims.map(() => 0);
  if (amount <= first) return claims.map(({ preference }) => (preference * amount) / first);
  const price = priceOf(claims, amount);
  return claims.map((claim) => worth(claim, price));
}

/** What a claim is worth at a price a share. */
function worth({ shares, preference, participates }: Claim, price: number): number {
  return participates ? preference + shares * price : Math.max(preference, shares * price);
}

/** The price a share at which all claims come to the amount: they rise with it in straight pieces, between which it lies. */
function priceOf(claims: readonly Claim[], amount: number): number {
  const total = (price: number) => claims.reduce((sum, claim) => sum + worth(claim, price), 0);
  const turns = claims
    .filter(({ shares, participates }) => shares > 0 && !participates)
    .map(({ shares, preference }) => preference / shares)
    .sort((a, b) => a - b);
  let from = 0;
  for (const turn of turns) {
    if (total(turn) > amount) break;
    from = turn;
  }
  // The quotients that gave the turns, not shares * from >= preference: a product may miss its own quotient by a bit, and
  // that claim would then be paid on top of what the others share.
  const sharing = claims.filter(
    ({ shares, preference, participates }) => participates || (shares > 0 && preference / shares <= from),
  );
  const shares = sharing.reduce((sum, claim) => sum + claim.shares, 0);
  return shares === 0 ? from : from + (amount - total(from)) / shares;
}
