/** Colours to grey. Pure. */

/**
 * Luma by ITU-R BT.601 (0.299 R + 0.587 G + 0.114 B), in whole numbers.
 * @param rgba four values from 0 to 255 for each pixel; what cannot be seen through is not looked at
 */
export function greyOf(rgba: Uint8Array | Uint8ClampedArray): Uint8Array {
  const luma = new Uint8Array(rgba.length >> 2);
  for (let i = 0, at = 0; i < luma.length; i++, at += 4)
    luma[i] = (77 * (rgba[at] ?? 0) + 150 * (rgba[at + 1] ?? 0) + 29 * (rgba[at + 2] ?? 0) + 128) >> 8;
  return luma;
}
