// The documents of a week as a figure: what they do to cash, each leading on to its own lines; and one of them.
// Worked figure: in week 19 a remittance of 4,210.00, freight out −96.00 and overhead −700.00 move cash by 3,414.00.
import { documentsOf, type WeekDocument } from './documents.ts';
import type { ExplanationLine, FigureKey } from './types.ts';
import { amountOf, type Draft, exactMoney, line, moneyPart, type Scene, sumFormula } from './write.ts';

/** Null when the week lies beyond the plan's horizon. */
export function documentsFigure(scene: Scene, week: number): Draft | null {
  if (week >= scene.results.pass.weeks) return null;
  const papers = documentsOf(scene, week);
  const cash = papers.reduce((sum, paper) => sum + paper.cash, 0);
  const total = amountOf(scene, cash);
  const lines = papers.map((paper) => paperLine(scene, week, paper));
  return {
    title: `Documents of ${scene.say.week(week)}`,
    value: scene.say.money(cash),
    exact: total.toFixed(),
    meaning: 'What is dated in this week, and what all of it does to cash.',
    formula: lines.some(({ adds }) => adds !== null) ? sumFormula(scene, lines, total) : 'no cash moves',
    lines,
    caution: null,
  };
}

/** What a paper does to cash; one that does nothing to it says what it comes to. */
function paperLine(scene: Scene, week: number, paper: WeekDocument): ExplanationLine {
  const { id, title, amount, cash } = paper;
  const explains: FigureKey = { of: 'document', week, document: id };
  if (cash !== 0) {
    const reason = amount === cash || amount === null ? '' : `It comes to ${exactMoney(scene, amount)}.`;
    return moneyPart(scene, cash, { label: title, reason: `${paper.note} ${reason}`.trim(), explains });
  }
  const value = amount === null ? (paper.lines[0]?.value ?? '') : exactMoney(scene, amount);
  const reason =
    amount === 0 || paper.kind === 'remittance' ? paper.note : `${paper.note} No cash moves now.`;
  return line({ label: title, value, reason, explains });
}

/** Null when the week has no such document (any more). */
export function documentFigure(
  scene: Scene,
  { week, document }: Extract<FigureKey, { of: 'document' }>,
): Draft | null {
  const paper = documentsOf(scene, week).find(({ id }) => id === document);
  if (!paper) return null;
  const { amount, lines } = paper;
  const total = amountOf(scene, amount ?? 0);
  return {
    title: `${paper.title}, ${scene.say.week(week)}`,
    value: amount === null ? (lines[0]?.value ?? '') : scene.say.money(amount),
    exact: amount === null ? null : total.toFixed(),
    meaning: paper.note,
    formula: amount === null ? 'nothing to pay yet' : sumFormula(scene, lines, total),
    lines,
    caution: null,
  };
}
