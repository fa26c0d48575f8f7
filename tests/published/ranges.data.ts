/**
 * The limits of the book that rest on a published text, typed from the texts and not from the book.
 * S: read in a public copy of the text or of a part of it. M: recalled from the named text without it at hand.
 */
export interface PublishedLimits {
  readonly low?: number;
  readonly high?: number;
  readonly unit: string;
  /** The entry of `content/sources` that the text stands for. */
  readonly source: string;
  readonly flag: 'S' | 'M';
  /** Where the figure stands, and how it is printed there when in another unit. */
  readonly place: string;
}

const eu = { source: 'eu-2014-45', unit: '%' } as const;
const uk = { source: 'uk-si-1986-1078', flag: 'S' } as const;
const us = { source: 'us-40-cfr-85-2203', flag: 'S' } as const;
const ccr = { source: 'ccr-1968-2' } as const;
const table = { source: 'battery-state-table', flag: 'S' } as const;

export const publishedLimits: Readonly<Record<string, PublishedLimits>> = {
  // Roadworthiness, spark ignition. Directive 2014/45/EU, annex I, item 8.2.1.2; figures (b) and (c) also in a French decree of 9 August 2002.
  'co-idle-eu-to-1986': { ...eu, high: 4.5, flag: 'M', place: '8.2.1.2 (b)(i), no advanced control, first use up to 1 October 1986' },
  'co-idle-eu-from-1986': { ...eu, high: 3.5, flag: 'M', place: '8.2.1.2 (b)(i), no advanced control, first use after 1 October 1986' },
  'co-idle-eu-to-2002': { ...eu, high: 0.5, flag: 'M', place: '8.2.1.2 (b)(ii), idle' },
  'co-fast-idle-eu-to-2002': { ...eu, high: 0.3, flag: 'M', place: '8.2.1.2 (b)(ii), high idle, 2000 rpm or more' },
  'co-idle-eu-after-2002': { ...eu, high: 0.3, flag: 'M', place: '8.2.1.2 (b)(ii), idle, first use after 1 July 2002' },
  'co-fast-idle-eu-after-2002': { ...eu, high: 0.2, flag: 'M', place: '8.2.1.2 (b)(ii), high idle, first use after 1 July 2002' },
  'lambda-fast-idle': { ...eu, unit: '1', low: 0.97, high: 1.03, flag: 'M', place: '8.2.1.2 (c), 1 ± 0.03 at high idle' },
  // UK SI 1986/1078: regulation 61 (10A) in the note to SI 1995/2210; schedule 7B, Part I, paragraphs 2, 3 and 3A.
  'co-idle-1975-to-1986': { ...uk, high: 4.5, unit: '%', place: 'regulation 61 (10A), first use 1 August 1975 to 31 July 1986' },
  'co-idle-from-1986': { ...uk, high: 3.5, unit: '%', place: 'regulation 61 (10A), first use from 1 August 1986' },
  'hc-no-catalyst': { ...uk, high: 1200, unit: 'ppm', place: 'regulation 61 (10A), printed as 0.12 % at 2000 rpm' },
  'co-idle-before-2002': { ...uk, high: 0.5, unit: '%', place: 'schedule 7B, paragraph 3, first use before 1 July 2002' },
  'co-fast-idle-before-2002': { ...uk, high: 0.3, unit: '%', place: 'schedule 7B, paragraph 3A, first use before 1 July 2002' },
  'co-idle-from-2002': { ...uk, high: 0.3, unit: '%', place: 'schedule 7B, paragraph 3, first use on or after 1 July 2002' },
  'co-fast-idle-from-2002': { ...uk, high: 0.2, unit: '%', place: 'schedule 7B, paragraph 3A, first use on or after 1 July 2002' },
  'hc-fast-idle': { ...uk, high: 200, unit: 'ppm', place: 'schedule 7B, paragraph 2(b), printed as 0.02 %' },
  // US 40 CFR 85.2203.
  'co-us-short-test': { ...us, high: 1.2, unit: '%', place: '(a), 1981 on, short tests' },
  'hc-us-short-test': { ...us, high: 220, unit: 'ppm', place: '(a), 1981 on, short tests, as hexane' },
  'co-us-two-idle': { ...us, high: 1, unit: '%', place: '(b), lower of two idle readings' },
  'hc-us-two-idle': { ...us, high: 200, unit: 'ppm', place: '(b), lower of two idle readings, as hexane' },

  // Carbon monoxide at work.
  'co-exposure-8-hours': { source: 'osha-29-cfr-1910-1000', high: 50, unit: 'ppm', flag: 'S', place: 'table Z-1, mean of 8 h, on the chemical sampling page' },
  'co-exposure-8-hours-california': { source: 'california-exposure-limits', high: 25, unit: 'ppm', flag: 'S', place: 'mean of 8 h, on the same page' },
  'co-exposure-ceiling': { source: 'california-exposure-limits', high: 200, unit: 'ppm', flag: 'S', place: 'ceiling, on the same page' },
  'co-exposure-8-hours-eu': { source: 'eu-2017-164', high: 20, unit: 'ppm', flag: 'M', place: 'annex, 8 h; UK EH40/2005 the same' },
  'co-exposure-15-minutes-eu': { source: 'eu-2017-164', high: 100, unit: 'ppm', flag: 'M', place: 'annex, 15 min; UK EH40/2005 the same' },

  // 13 CCR 1968.2. Read: (d)(1), (d)(2.1), (d)(2.2), the first part of (d)(2.5), the head of (d)(5), (e)(3.1).
  'lamp-check-time': { ...ccr, low: 15, high: 20, unit: 's', flag: 'S', place: '(d)(2.1.2), at least 15 to 20 s' },
  'misfire-share-single-code': { ...ccr, low: 90, unit: '%', flag: 'S', place: '(e)(3.1.3), more than 90 % of the misfires' },
  'misfire-share-multiple': { ...ccr, high: 10, unit: '%', flag: 'S', place: '(e)(3.1.3), two or more cylinders each more than 10 %' },
  'misfire-floor-catalyst': { ...ccr, high: 5, unit: '%', flag: 'M', place: '(e)(3.2.1), lowest threshold over 200 revolutions' },
  'misfire-floor-emission': { ...ccr, high: 1, unit: '%', flag: 'M', place: '(e)(3.2.2), lowest threshold over 1000 revolutions' },
  'lamp-out-cycles': { ...ccr, low: 3, unit: 'count', flag: 'M', place: '(d)(2.3); misfire (e)(3.4.5)' },
  'code-erased-warm-ups': { ...ccr, low: 40, unit: 'count', flag: 'M', place: '(d)(2.4), 40 warm-up cycles' },
  'pending-misfire-erased': { ...ccr, low: 80, unit: 'count', flag: 'M', place: '(e)(3.4.1)(C), 80 driving cycles' },
  'similar-speed': { ...ccr, low: -375, high: 375, unit: 'rpm', flag: 'M', place: '(c) definitions, within 375 rpm' },
  'similar-load': { ...ccr, low: -20, high: 20, unit: '%', flag: 'M', place: '(c) definitions, within 20 %' },
  'warm-up-rise': { ...ccr, low: 22.2, unit: 'Kdiff', flag: 'M', place: '(c) definitions, printed as 40 °F' },
  'warm-up-temperature': { ...ccr, low: 71.1, unit: 'C', flag: 'M', place: '(c) definitions, printed as 160 °F' },
  'drive-time-total': { ...ccr, low: 600, unit: 's', flag: 'M', place: '(d)(4.3.2), since start' },
  'drive-time-cruise': { ...ccr, low: 300, unit: 's', flag: 'M', place: '(d)(4.3.2), at 25 mph or more' },
  'drive-time-idle': { ...ccr, low: 30, unit: 's', flag: 'M', place: '(d)(4.3.2), continuous idle' },

  // Other diagnostic rules.
  'similar-load-older': { source: 'us-40-cfr-86-094-17', low: -10, high: 10, unit: '%', flag: 'M', place: '86.094-17, 10 % load' },
  'warm-up-rise-un': { source: 'un-regulation-83', low: 22, unit: 'Kdiff', flag: 'M', place: 'annex 11, section 2, at least 22 K' },
  'warm-up-temperature-un': { source: 'un-regulation-83', low: 70, unit: 'C', flag: 'M', place: 'annex 11, section 2, printed as 343 K (70 °C)' },
  'monitor-allowance-1996-2000': { source: 'us-40-cfr-85-2222', high: 2, unit: 'count', flag: 'M', place: '(c), model years 1996 to 2000' },
  'monitor-allowance': { source: 'us-40-cfr-85-2222', high: 1, unit: 'count', flag: 'M', place: '(c), model year 2001 on' },
  'monitor-allowance-california-older': { source: 'ca-16-ccr-3340-42-2', high: 2, unit: 'count', flag: 'S', place: '(b), superseded, 1996 to 2000' },

  // Batteries. The table of rested voltage and gravity is an encyclopaedia's, at about 26.7 °C.
  'battery-rest-full': { ...table, low: 12.65, unit: 'V', place: '100 %' },
  'battery-rest': { ...table, low: 12.45, unit: 'V', place: '75 %' },
  'battery-rest-half': { ...table, low: 12.24, high: 12.45, unit: 'V', place: '50 % and 75 %' },
  'battery-rest-quarter': { ...table, low: 12.06, high: 12.24, unit: 'V', place: '25 % and 50 %' },
  'battery-rest-empty': { ...table, low: 11.89, high: 12.06, unit: 'V', place: '0 % and 25 %' },
  'battery-gravity-full': { ...table, low: 1.265, unit: '1', place: '100 %' },
  'battery-gravity': { ...table, low: 1.225, unit: '1', place: '75 %' },
  'battery-cell-spread': { source: 'army-tm-9-6140-200', high: 0.025, unit: '1', flag: 'S', place: 'cells of a full battery more than 0.025 apart are unserviceable' },
  'cold-cranking-sae': { source: 'sae-j537', low: 7.2, unit: 'V', flag: 'M', place: 'cold cranking, −18 °C, 30 s' },
  'cold-cranking-en': { source: 'iec-60095-1', low: 7.5, unit: 'V', flag: 'M', place: 'cold cranking, −18 °C, 10 s' },

  // Engine mechanics.
  'compression-lowest-over-highest': { source: 'army-tm-5-4210-230', low: 75, unit: '%', flag: 'S', place: 'engine addendum 2, not less than 75 % of the highest' },
  'compression-within-10-psi': { source: 'army-tm-10-3930-618', high: 10, unit: 'psi', flag: 'S', place: 'paragraph 2-12' },
  'compression-lowest-below-mean': { source: 'army-tm-1-1500-204', high: 20, unit: '%', flag: 'S', place: '20 % or more below the average: investigate' },
  'leak-down-differential': { source: 'faa-ac-43-13-1b', high: 25, unit: '%', flag: 'S', place: '8-14 and 8-15, loss above 25 % of 80 psi, which is below 60/80' },

  // Plugs, spark and mixture.
  'plug-gap-army-metric': { source: 'army-tm-10-3930-653', low: 0.7, high: 0.8, unit: 'mm', flag: 'S', place: '4-7-9' },
  'plug-gap-army-inch': { source: 'army-tm-5-4310-360', low: 0.711, high: 0.762, unit: 'mm', flag: 'S', place: '4-11, printed as 0.028 to 0.030 in' },
  'plug-resistor': { source: 'jis-b-8031', low: 3, high: 7.5, unit: 'kohm', flag: 'M', place: 'resistor plugs, nominal 5 kΩ' },
  'firing-voltage-open-air-06': { source: 'denton', low: 2, high: 3, unit: 'kV', flag: 'S', place: 'ignition chapter, abstract, earlier edition: 0.6 mm at 1 bar' },
  'firing-voltage-open-air-10': { source: 'denton', low: 3, high: 4, unit: 'kV', flag: 'S', place: 'ignition chapter, abstract, later edition: 1 mm at 1 bar' },
  'firing-voltage-compression': { source: 'denton', low: 8, high: 10, unit: 'kV', flag: 'S', place: 'ignition chapter, abstract, later edition: 1 mm at 8:1' },
  'spark-energy-conventional': { source: 'heywood', low: 30, high: 50, unit: 'mJ', flag: 'M', place: '9.5' },
  'lambda-full-load': { source: 'heywood', low: 0.85, high: 0.9, unit: '1', flag: 'M', place: 'chapters 7 and 15, best power' },
  'lambda-best-economy': { source: 'heywood', low: 1.05, high: 1.1, unit: '1', flag: 'M', place: 'chapters 7 and 15, best economy' },
  'lambda-misfire-limits': { source: 'heywood', low: 0.6, high: 1.2, unit: '1', flag: 'M', place: 'chapters 7 and 15, lean misfire above 1.2 to 1.3, rich limit near 0.6' },
  'fuel-ethanol-85': { source: 'astm-d5798', low: 51, high: 83, unit: '%', flag: 'M', place: 'by volume, seasonal classes' },

  // Catalyst and lambda sensor.
  'catalyst-light-off': { source: 'heywood', low: 250, high: 300, unit: 'C', flag: 'M', place: '11.6.2, half conversion' },
  'catalyst-temperature': { source: 'catalyst-student-text', low: 400, high: 800, unit: 'C', flag: 'S', place: 'working temperature' },
  'catalyst-ageing': { source: 'sae-871192', high: 900, unit: 'C', flag: 'S', place: 'abstract, oxidising gas at 900 °C and above' },
  'catalyst-lean-hot': { source: 'sae-840549', high: 871, unit: 'C', flag: 'S', place: 'abstract, printed as 1600 °F' },
  'lambda-sensor-working': { source: 'oxygen-sensor-page', low: 350, unit: 'C', flag: 'S', place: 'working above about 350 °C (662 °F)' },
};
