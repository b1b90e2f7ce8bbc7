/** Markdown of ours as plain text, for editors that show no Markdown: marks, pictures and link targets left out, tables as lines. */
export function plainText(markdown: string): string {
  return markdown
    .split('\n')
    .filter((line) => !/^\s*\|?[\s|:-]*-{3}[\s|:-]*$/.test(line))
    .map((line) => line.replace(/!\[([^\]]*)\]\([^)]*\)/g, '$1').replace(/\[([^\]]*)\]\([^)]*\)/g, '$1').replace(/^#+\s+/, '').replace(/(?<!\\)(\*\*|`)/g, ''))
    .map((line) => (line.startsWith('|') ? line.slice(1).replace(/\|\s*$/, '').split(/(?<!\\)\|/).map((cell) => cell.trim()).filter((cell) => cell !== '').join('  ') : line))
    .map((line) => line.replace(/\\([\\`*_{}[\]()#+\-.!|<>~&])/g, '$1'))
    .join('\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim();
}
