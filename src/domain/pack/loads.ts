// What pallets travel in: inner sizes and what they may carry. Millimetres and kilograms.
// Containers: least inner length, width and door height of ISO 668 / ISO 1496-1 for 1CC and 1AA (not high cube). Payload:
// 30,480 kg gross (ISO 668, Amendment 1 of 2005) less 2,300 and 3,750 kg of container, a common tare; roads often allow
// less. The trailers' sizes are common practice, no source: a 53 ft dry van is some 630 x 98.5 in inside, behind a door of
// 108 in; a European one 13.6 x 2.45 m and 2.65 m high. Their payload: 80,000 lb gross on US interstate highways (23 CFR
// 658.17) less 35,000 lb of tractor and trailer; 40 t (Directive 96/53/EC) less 16 t. The empty weights are common practice.
// Worked figure: 26 pallets of 1200 x 1000 mm stand in a European trailer, 33 of 1200 x 800.

export const LOAD_NAMES = ['trailer53', 'trailerEu', 'container20', 'container40'] as const;
export type LoadName = (typeof LOAD_NAMES)[number];

export interface Load {
  /** "53 ft trailer" */
  words: string;
  lengthMm: number;
  widthMm: number;
  /** What passes the door. */
  heightMm: number;
  payloadKg: number;
}

export const LOADS: Readonly<Record<LoadName, Load>> = {
  trailer53: { words: '53 ft trailer', lengthMm: 16_002, widthMm: 2502, heightMm: 2743, payloadKg: 20_411 },
  trailerEu: {
    words: 'European trailer',
    lengthMm: 13_600,
    widthMm: 2450,
    heightMm: 2650,
    payloadKg: 24_000,
  },
  container20: { words: '20 ft container', lengthMm: 5867, widthMm: 2330, heightMm: 2261, payloadKg: 28_180 },
  container40: {
    words: '40 ft container',
    lengthMm: 11_998,
    widthMm: 2330,
    heightMm: 2261,
    payloadKg: 26_730,
  },
};

/** Room that a pallet needs beside its own sides, in both directions: common practice, no source. */
export const PALLET_GAP_MM = 10;
