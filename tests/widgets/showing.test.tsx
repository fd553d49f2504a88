// @vitest-environment happy-dom
/**
 * What is shown must also be there for a screen reader: a table's headers and every one of its rows, a price said
 * plainly, a verdict row as one link. Roles and names are computed by testing-library after WAI-ARIA and the W3C
 * accessible name rules. Worked figure: 520 rows are all there after the second of two steps.
 */
import { act, cleanup, fireEvent, render, screen, within } from '@testing-library/preact';
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type ChartGeometry, indexAt, xOf, yOf } from '../../src/widgets/chart-spec.ts';
import { Disclosure } from '../../src/widgets/Disclosure.tsx';
import { PriceTag, VerdictRow } from '../../src/widgets/Figure.tsx';
import { Table } from '../../src/widgets/Table.tsx';

beforeEach(() => vi.useFakeTimers());
afterEach(() => {
  cleanup();
  vi.useRealTimers();
});

test('a long table ends up with every row, each with its header', () => {
  const columns = [
    { key: 'week', label: 'Week', kind: 'text' },
    { key: 'cash', label: 'Cash', kind: 'number' },
  ] as const;
  const rows = Array.from({ length: 520 }, (_, index) => ({
    id: `${index}`,
    cells: [`week ${index + 1}`, '−1'],
  }));
  render(<Table caption="Cash by week" columns={columns} rows={rows} />);
  expect(screen.getByText('week 60')).toBeDefined();
  expect(screen.queryByText('week 61')).toBeNull();
  act(() => {
    vi.advanceTimersByTime(50);
  });
  const last = screen.getByText('week 520');
  expect(last.tagName).toBe('TH');
  expect(last.getAttribute('scope')).toBe('row');
  expect(document.querySelectorAll('tbody tr')).toHaveLength(520);
  const region = screen.getByRole('region', { name: 'Cash by week' });
  expect(region.tabIndex).toBe(0);
  expect(
    within(region)
      .getAllByRole('columnheader')
      .map((cell) => cell.textContent),
  ).toEqual(['Week', 'Cash']);
});

test.each([
  ['4.99', '4', '99'],
  ['4,99', '4', '99'],
  ['1,234.50', '1,234', '50'],
  ['12', '12', undefined],
])('the price %s is raised for the eye and plain for the ear', (text, whole, cents) => {
  const { container } = render(<PriceTag text={text} currency="$" label="Shelf price" />);
  expect(container.querySelector('.ff-spoken')?.textContent).toBe(`Shelf price $${text}`);
  expect(container.querySelector('.ff-price-cents')?.textContent).toBe(cents);
  expect(container.querySelector('.ff-price-number')?.textContent).toBe(`$${whole}${cents ?? ''}`);
  expect(container.querySelector('.ff-price-face')?.getAttribute('aria-hidden')).toBe('true');
});

test('a verdict row is one link that says all of it', () => {
  render(
    <VerdictRow
      verdict="fails"
      name="Cash"
      word="Fails"
      figure="−12,300"
      reason="Short in week 9."
      href="#cash"
    />,
  );
  const link = screen.getByRole('link');
  expect(link.textContent).toContain('Fails');
  for (const part of ['Cash', '−12,300', 'Short in week 9.']) expect(link.textContent).toContain(part);
});

test('what is closed is not built, and opening builds it', () => {
  const toggled: boolean[] = [];
  render(
    <Disclosure summary="As a table" onToggle={(open) => toggled.push(open)}>
      <p>520 rows</p>
    </Disclosure>,
  );
  expect(screen.queryByText('520 rows')).toBeNull();
  act(() => {
    fireEvent.click(screen.getByText('As a table'));
  });
  expect(screen.getByText('520 rows')).toBeDefined();
  expect(toggled).toEqual([true]);
});

test('a place on a chart and its point find each other', () => {
  const numbers = fc.record({
    firstPx: fc.integer({ min: 0, max: 90 }),
    stepPx: fc.integer({ min: 1, max: 40 }),
  });
  fc.assert(
    fc.property(
      numbers,
      fc.integer({ min: 1, max: 520 }),
      fc.nat(519),
      ({ firstPx, stepPx }, count, index) => {
        const geometry: ChartGeometry = { ...plot, firstPx, stepPx };
        const point = Math.min(index, count - 1);
        expect(indexAt(geometry, xOf(geometry, point), count)).toBe(point);
        expect(indexAt(geometry, -1e6, count)).toBe(0);
        expect(indexAt(geometry, 1e6, count)).toBe(count - 1);
      },
    ),
  );
  expect([yOf(plot, -50), yOf(plot, 0), yOf(plot, 100)]).toEqual([210, 160, 60]);
});

const plot: ChartGeometry = {
  leftPx: 40,
  rightPx: 340,
  topPx: 10,
  bottomPx: 210,
  firstPx: 40,
  stepPx: 3,
  lowY: -50,
  highY: 150,
};
