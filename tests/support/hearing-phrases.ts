/** Words of spoken numbers; any sequence of phrases in a list may be recognised. */
export const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
export const NUMBERS = [
  ...DIGITS,
  ...['ten', 'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'],
  ...['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'],
];
export const COMMANDS = ['yes', 'no', 'stop', 'go', 'enter'];
