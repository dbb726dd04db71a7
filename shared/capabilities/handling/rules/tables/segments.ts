/**
 * Parts of the body as shares of its mass, by published table. Tables differ, mostly in where the
 * thigh ends, so a safety check takes the heaviest of them and says which one that is.
 */
export interface SegmentTable {
  readonly source: string;
  readonly shares: Readonly<Record<Segment, number>>;
}
export type Segment =
  | 'hand'
  | 'forearm'
  | 'upper-arm'
  | 'arm'
  | 'foot'
  | 'shank'
  | 'foot-and-shank'
  | 'thigh'
  | 'leg'
  | 'head'
  | 'trunk';

/** Whole limbs of the second to fifth table are sums of their parts. */
export const SEGMENT_TABLES = {
  winter: {
    source: 'Winter (after Dempster), as restated in a university course sheet',
    shares: {
      hand: 0.006,
      forearm: 0.016,
      'upper-arm': 0.028,
      arm: 0.05,
      foot: 0.0145,
      shank: 0.0465,
      'foot-and-shank': 0.061,
      thigh: 0.1,
      leg: 0.161,
      head: 0.081,
      trunk: 0.497,
    },
  },
  'plagenhoef-men': {
    source: 'Plagenhoef 1983, men, as restated in a university laboratory page',
    shares: {
      hand: 0.0065,
      forearm: 0.0187,
      'upper-arm': 0.0325,
      arm: 0.0577,
      foot: 0.0143,
      shank: 0.0475,
      'foot-and-shank': 0.0618,
      thigh: 0.105,
      leg: 0.1668,
      head: 0.0896,
      trunk: 0.4684,
    },
  },
  'plagenhoef-women': {
    source: 'Plagenhoef 1983, women, as restated in a university laboratory page',
    shares: {
      hand: 0.005,
      forearm: 0.0157,
      'upper-arm': 0.029,
      arm: 0.0497,
      foot: 0.0133,
      shank: 0.0535,
      'foot-and-shank': 0.0668,
      thigh: 0.1175,
      leg: 0.1843,
      head: 0.082,
      trunk: 0.45,
    },
  },
  'de-leva-men': {
    source: 'de Leva, J Biomech 1996;29:1223-30, men, from memory',
    shares: {
      hand: 0.0061,
      forearm: 0.0162,
      'upper-arm': 0.0271,
      arm: 0.0494,
      foot: 0.0137,
      shank: 0.0433,
      'foot-and-shank': 0.057,
      thigh: 0.1416,
      leg: 0.1986,
      head: 0.0694,
      trunk: 0.4346,
    },
  },
  'de-leva-women': {
    source: 'de Leva, J Biomech 1996;29:1223-30, women, from memory',
    shares: {
      hand: 0.0056,
      forearm: 0.0138,
      'upper-arm': 0.0255,
      arm: 0.0449,
      foot: 0.0129,
      shank: 0.0481,
      'foot-and-shank': 0.061,
      thigh: 0.1478,
      leg: 0.2088,
      head: 0.0668,
      trunk: 0.4257,
    },
  },
} as const satisfies Readonly<Record<string, SegmentTable>>;

/** The heaviest share any table gives a segment, with its source. */
export function heaviestShare(segment: Segment): { readonly share: number; readonly source: string } {
  return Object.values<SegmentTable>(SEGMENT_TABLES)
    .map(({ shares, source }) => ({ share: shares[segment], source }))
    .reduce((a, b) => (b.share > a.share ? b : a));
}
