const WORDS: Readonly<Record<string, string>> = { pom: 'POM', 'filled-polymer': 'filled polymer', 'cast-iron': 'cast iron' };

/** A material of the schema's list as it stands in a sentence: `POM`, `filled polymer`, `bronze`. */
export const materialInWords = (name: string | undefined): string => WORDS[name ?? ''] ?? name ?? 'its material';
