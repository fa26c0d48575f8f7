/**
 * Words that may stand with a capital inside a sentence, or among the other words of an entry. Everything else with a
 * capital is taken for the name of a maker, a product or a person, none of which this book names.
 */
export const properNames: Readonly<Record<string, readonly string[]>> = {
  places: ['California', 'EU', 'European', 'French', 'Kingdom', 'Luxembourg', 'UK', 'United', 'US'],
  months: ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'],
  // Named as the publisher of a text, never as advice to buy.
  'texts and their publishers': ['CCR', 'EN', 'IEC', 'OSHA', 'SAE', 'SI', 'TM', 'UN'],
  'units and people whom units and effects are named after': ['A', 'C', 'F', 'Fahrenheit', 'Hall', 'I', 'K', 'L', 'N', 'R', 'V', 'Ω'],
  'letters of coils, sensors and banks': ['B', 'B1', 'B2', 'M'],
  'gases and fuels': ['CO', 'CO2', 'E10', 'E85', 'HC', 'NOx', 'O2'],
  // Shorthand that the trade shares whatever the make of the car; most are search words only.
  shorthand: [
    'AC', 'AFR', 'CAN', 'CASE', 'CCA', 'CKP', 'CMP', 'COP', 'CR', 'CV', 'DI', 'DIS', 'DLC', 'DMF', 'DMM', 'DTC', 'DVM', 'ECM', 'ECT', 'ECU', 'EGR',
    'EMF', 'EV', 'EVAP', 'GDI', 'HEGO', 'HEV', 'HPFP', 'HT', 'IAT', 'IGT', 'LT', 'LTFT', 'LTFT2', 'MAF', 'MAP', 'MIL', 'MOT', 'MPI', 'OBD', 'OBDMID',
    'OL', 'PCM', 'PCV', 'PFI', 'PID', 'PIDs', 'RPM', 'SOC', 'SRS', 'STFT', 'STFT1', 'TBI', 'TDC', 'VE', 'VR', 'VSS', 'Vref',
  ],
  'test results of the diagnostic standard': ['A2', 'A3', 'P2', 'P3'],
};

/** Names that follow a rule of writing rather than a list. */
export const properNamePatterns: readonly RegExp[] = [
  // Trouble codes, also with a place left open.
  /^[PCBU][0-3][0-9A-F]{2}[0-9A-Fx]$/,
  // Metric threads of plugs.
  /^M(8|10|12|14|18)$/,
  // Engine layouts: flat, in line, vee.
  /^[HIV]\d{1,2}$/,
];
