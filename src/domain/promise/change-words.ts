// A factor as people say it. Worked figure: 1.57 is "57 % more", 0.92 "8 % less", 1.004 "no change".

/** `percent` writes a share. Whole points: nothing that goes into a lift or a trend is known better. */
export function changeWords(factor: number, percent: (share: number) => string): string {
  const points = Math.round(100 * (factor - 1));
  if (points === 0) return 'no change';
  return `${percent(Math.abs(points) / 100)} ${points > 0 ? 'more' : 'less'}`;
}
