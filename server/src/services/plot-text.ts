/** Text for XML content and attributes; control characters, which XML does not allow, are left out. */
export function escapeXml(text: string): string {
  return text.replace(/[\u0000-\u001f\u007f]/g, ' ').replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}

const NARROW = /[ijlrtfI.,:;'!|()[\]·⁰¹²³⁻ ]/u;
const WIDE = /[mwMWÅØ%@—–×]/u;

/** Estimated width in px of a text set in a sans-serif face. A little too wide rather than too narrow. */
export function widthOf(text: string, size: number): number {
  let ems = 0;
  for (const character of text) ems += NARROW.test(character) ? 0.36 : WIDE.test(character) ? 0.9 : 0.6;
  return ems * size;
}

/** The text, shortened with an ellipsis where it is wider than `width` px. */
export function fit(text: string, width: number, size: number): string {
  if (widthOf(text, size) <= width) return text;
  let kept = '';
  for (const character of text) {
    if (widthOf(`${kept}${character}…`, size) > width) break;
    kept += character;
  }
  return `${kept.trimEnd()}…`;
}
