/** The display: viewing distance, size of the screen, light. */
import { said } from './said.ts';

export const displayScreen = said('displayScreen', {
  title: 'Display',
  scope: 'For this device. Everything applies at once.',
  distance: 'Viewing distance',
  distanceAsked: 'From how far away do you read the work screen?',
  nearer: 'Nearer',
  farther: 'Farther',
  metres: (metres: number) => `${metres} m`,
  digitsHigh: (millimetres: number) =>
    `The digits of the stud number and of the value are then ${millimetres.toFixed(1)} mm high, where the screen has room for them, as here:`,
  size: 'Size of this screen',
  howToMeasure:
    'Hold something of known length against the screen, and make the bar exactly as long. Do it again on another screen.',
  heldAgainst: 'What is held against it',
  ruler: {
    'short side of a card': 'the short side of a bank card',
    'long side of a card': 'the long side of a bank card',
    '5 cm': 'five centimetres of a ruler',
    '20 cm': 'twenty centimetres of a ruler',
  },
  barFor: (ruler: string) => `A bar for ${ruler}`,
  make: {
    muchShorter: 'Much shorter',
    shorter: 'Shorter',
    longer: 'Longer',
    muchLonger: 'Much longer',
  },
  isAsLong: 'It is exactly as long now',
  notMeasured: 'Not measured: 96 pixels to the inch are assumed, which few screens have.',
  measured: (pixelsPerMm: number) => `Measured on this device: ${pixelsPerMm.toFixed(2)} pixels to a millimetre.`,
  forget: 'Forget it',
  light: 'Light',
  theme: {
    'as the device': 'As the device has it',
    light: 'Light, for a lit shop',
    dark: 'Dark, for a dim one',
    'bright sun': 'Bright sun: black on white, thick lines',
  },
});
