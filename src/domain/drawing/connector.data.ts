/** What the pins of a connector are on one arrangement, in one order that is often met. */
export interface PinArrangement {
  readonly name: string;
  /** From the left, looking into the wiring's half with the latch up. */
  readonly pins: readonly string[];
  readonly meaning: string;
}

export type PinCount = 2 | 3 | 4;

export const pinArrangements: Readonly<Record<PinCount, readonly PinArrangement[]>> = {
  2: [
    {
      name: 'Coil without driver',
      pins: ['supply', 'trigger'],
      meaning: 'supply is battery voltage with the key on; trigger is pulled to earth by the control unit while the coil charges. The primary winding lies between the two.',
    },
    {
      name: 'Injector',
      pins: ['supply', 'switched'],
      meaning: 'supply is battery voltage with the key on; switched is pulled to earth while it sprays. On direct injection both wires go to the control unit, at a far higher voltage: stop.',
    },
    {
      name: 'Inductive sensor',
      pins: ['signal', 'return'],
      meaning: 'signal and return are the two ends of one winding; neither touches earth.',
    },
  ],
  3: [
    {
      name: 'Coil with built-in driver',
      pins: ['supply', 'earth', 'trigger'],
      meaning: 'supply and earth carry the current of the coil; trigger is a small pulse from the control unit. Ohms between these pins mean nothing.',
    },
    {
      name: 'Pack of two coils without driver',
      pins: ['trigger A', 'supply', 'trigger B'],
      meaning: 'supply is common; trigger A and trigger B each belong to one winding, measured from supply to its own trigger.',
    },
    {
      name: 'Hall sensor',
      pins: ['supply', 'signal', 'earth'],
      meaning: 'supply is 5 V or more; signal steps between high and low; earth belongs to the sensor alone.',
    },
  ],
  4: [
    {
      name: 'Coil with built-in driver',
      pins: ['supply', 'earth', 'trigger', 'feedback'],
      meaning: 'supply, earth and trigger as with three pins; feedback tells the control unit that the coil has worked. On other coils this pin is a second earth.',
    },
    {
      name: 'Pack of two coils with drivers',
      pins: ['trigger A', 'earth', 'trigger B', 'supply'],
      meaning: 'one supply and one earth for both; trigger A and trigger B are small pulses, one for each pair of plugs.',
    },
    {
      name: 'Pack of three coils without driver',
      pins: ['trigger A', 'trigger B', 'trigger C', 'supply'],
      meaning: 'one common supply; trigger A, trigger B and trigger C each belong to one winding.',
    },
  ],
};
