/**
 * Chart.js, with only the parts we draw with; loaded by dynamic import when a chart first comes up. It paints lines,
 * bars, fills and axes from plain data and reports where they landed; everything with words is laid over it in HTML.
 * Worked figure: at two device pixels per px a 6 px dot tile is 12 device pixels, so dots stay sharp.
 */
import {
  BarController,
  BarElement,
  CategoryScale,
  Chart,
  type ChartConfiguration,
  type ChartDataset,
  Filler,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
  type Scale,
} from 'chart.js';
import { ownerFill } from './chart-fills.ts';
import type { ChartColours, ChartGeometry, ChartHandle, ChartSeries, ChartSpec } from './chart-spec.ts';

Chart.register(
  BarController,
  BarElement,
  CategoryScale,
  Filler,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
);

type Kind = 'line' | 'bar';
type Values = (number | null)[];
type Dataset = ChartDataset<Kind, Values>;

export interface MountOptions {
  readonly canvas: HTMLCanvasElement;
  readonly spec: ChartSpec;
  readonly colours: ChartColours;
  /** Called after every layout that moved something. */
  readonly onLayout: (geometry: ChartGeometry) => void;
}

/** Draws the chart and keeps it sized to the canvas' parent. */
export function mountChart({ canvas, spec, colours, onLayout }: MountOptions): ChartHandle {
  let last = '';
  const report = (chart: Chart): void => {
    const geometry = geometryOf(chart);
    const key = JSON.stringify(geometry);
    if (key === last) return;
    last = key;
    onLayout(geometry);
  };
  const chart = new Chart<Kind, Values, string>(canvas, {
    ...configure(spec, colours),
    plugins: [{ id: 'report-layout', afterDraw: (drawn) => report(drawn as unknown as Chart) }],
  });
  return {
    update: (nextSpec, nextColours) => {
      const { data, options } = configure(nextSpec, nextColours);
      chart.data = data;
      if (options !== undefined) chart.options = options;
      chart.update('none');
    },
    fit: () => chart.resize(),
    destroy: () => chart.destroy(),
  };
}

function configure(spec: ChartSpec, colours: ChartColours): ChartConfiguration<Kind, Values, string> {
  const least = spec.series.some((each) => each.style === 'bar') ? 'bar' : 'line';
  return {
    type: least,
    data: {
      labels: [...spec.xLabels],
      datasets: spec.series.map((series) => dataset(series, colours)),
    },
    options: {
      animation: false,
      responsive: true,
      maintainAspectRatio: false,
      events: [],
      layout: { padding: { top: 4, right: 4 } },
      scales: { x: xAxis(colours, least === 'bar' || spec.endsInset === true), y: yAxis(spec, colours) },
    },
  };
}

function dataset(series: ChartSeries, colours: ChartColours): Dataset {
  const colour = colours[series.colour];
  const values = [...series.values];
  if (series.style === 'bar') {
    return {
      type: 'bar',
      label: series.label,
      data: values,
      backgroundColor: ownerFill(series.colour, colours),
      borderColor: colour,
      borderWidth: 1,
      categoryPercentage: 0.9,
      barPercentage: 0.9,
    };
  }
  return {
    type: 'line',
    label: series.label,
    data: values,
    borderColor: colour,
    borderWidth: series.style === 'thin' ? 1 : 2,
    borderDash: dashes[series.style] ?? [],
    stepped: series.style === 'step' ? 'middle' : false,
    pointRadius: 0,
    tension: 0,
    ...lineFill(series, colours),
  };
}

const dashes: Partial<Record<ChartSeries['style'], number[]>> = {
  dashed: [9, 4],
  dotted: [2, 3],
  dashDot: [9, 3, 2, 3],
};

function lineFill(
  series: ChartSeries,
  colours: ChartColours,
): Pick<ChartDataset<'line'>, 'fill'> & { backgroundColor?: string; borderColor?: string } {
  if (series.fill === 'next') {
    return { fill: '+1', backgroundColor: `color-mix(in srgb, ${colours[series.colour]} 8%, transparent)` };
  }
  if (series.fill === 'none') return { fill: false };
  const below = ownerFill('atRisk', colours);
  const above = `color-mix(in srgb, ${colours[series.colour]} 80%, ${colours.paper})`;
  // The type knows only colour names, the painter takes patterns too.
  return { borderColor: colours.ink, fill: { target: { value: 0 }, above, below } as never };
}

function xAxis(colours: ChartColours, offset: boolean): object {
  return {
    type: 'category',
    offset,
    border: { display: false },
    grid: { display: false },
    afterBuildTicks: thinOut,
    ticks: { color: colours.ink2, font: tickFont(colours), maxRotation: 0, autoSkip: false },
  };
}

/** Keeps the labels that are multiples of 2, 5, 10 ..., as many as have 34 px each. */
function thinOut(axis: Scale): void {
  const roomPx = (axis.chart.width - 64) / Math.max(1, axis.ticks.length);
  const every = [1, 2, 5, 10, 20, 50, 100, 200, 500].find((step) => step * roomPx >= 34) ?? 1000;
  axis.ticks = axis.ticks.filter(({ value }) => {
    const number = Number(axis.getLabelForValue(value));
    return (Number.isFinite(number) ? number : value) % every === 0;
  });
}

const GUTTER_REM = 3.75;

function yAxis(spec: ChartSpec, colours: ChartColours): object {
  return {
    type: 'linear',
    beginAtZero: true,
    ...(spec.leastY === undefined ? {} : { suggestedMin: spec.leastY }),
    ...(spec.mostY === undefined ? {} : { suggestedMax: spec.mostY }),
    border: { display: false },
    // One gutter for all pictures, so that those under each other share their time axis.
    afterFit: (axis: Scale) => {
      axis.width = Math.max(axis.width, GUTTER_REM * colours.remPx);
    },
    grid: { color: colours.hair, drawTicks: false, lineWidth: 1 },
    ticks: {
      color: colours.ink2,
      font: tickFont(colours),
      padding: 6,
      maxTicksLimit: 8,
      callback: (value: string | number) => spec.formatTick(Number(value)),
    },
  };
}

function tickFont({ face, remPx }: ChartColours): object {
  return { family: face, size: 0.8125 * remPx, weight: 500 };
}

function geometryOf(chart: Chart): ChartGeometry {
  const { left, right, top, bottom } = chart.chartArea;
  const x = chart.scales['x'];
  const y = chart.scales['y'];
  const first = x?.getPixelForValue(0) ?? left;
  const second = (chart.data.labels?.length ?? 0) > 1 ? (x?.getPixelForValue(1) ?? first) : first;
  return {
    leftPx: left,
    rightPx: right,
    topPx: top,
    bottomPx: bottom,
    firstPx: first,
    stepPx: second - first,
    lowY: y?.min ?? 0,
    highY: y?.max ?? 0,
  };
}
