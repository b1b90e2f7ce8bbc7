/**
 * A short text that differs when the given one does, but for one chance in 2^53: two 32-bit multiply-and-rotate hashes over the code
 * units, mixed. It rests on the text alone, so that a client that remembers one from before a restart is not misled.
 */
export function fingerprint(text: string): string {
  let a = 0xdeadbeef;
  let b = 0x41c6ce57;
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index);
    a = Math.imul(a ^ unit, 0x9e3779b1);
    b = Math.imul(b ^ unit, 0x5f356495);
  }
  a = Math.imul(a ^ (a >>> 16), 0x85ebca6b) ^ Math.imul(b ^ (b >>> 13), 0xc2b2ae35);
  b = Math.imul(b ^ (b >>> 16), 0x85ebca6b) ^ Math.imul(a ^ (a >>> 13), 0xc2b2ae35);
  return `${(b >>> 0).toString(36)}${(a >>> 0).toString(36)}`;
}
