/** What the reference page says about one kind of problem with the text itself. */
export interface ProblemCode {
  /** One line, for lists and headings. */
  readonly title: string;
  /** One paragraph: what it means, why it matters, what to do. */
  readonly explanation: string;
}

/** Every code that the language room reports, with the text of its reference page. Codes are stable once released. */
export const problemCodes = {
  // The text as a whole
  'text-too-long': {
    title: 'The text is too long to be read',
    explanation:
      'A description is read up to 2,000,000 characters and 50,000 lines. Real machines need a fiftieth of that, so a longer text is nearly always a wrong file, or data that belongs elsewhere. Nothing of it is checked until it is shorter. Move parts that several machines share into a part list and name it under "uses".',
  },
  'too-deep': {
    title: 'Maps and lists are nested too deeply',
    explanation:
      'Entries may stand inside one another up to 64 levels; a description needs fewer than ten. What lies deeper is not read. The usual causes are brackets that were pasted or typed by accident.',
  },
  'too-many-entries': {
    title: 'There are more values than can be read',
    explanation:
      'A text may hold 200,000 values, counting what an alias repeats each time that it is used. The rest is not read. A long list of numbers, or aliases that contain aliases, are the usual causes.',
  },
  'too-many-aliases': {
    title: 'Aliases are used too often',
    explanation:
      'An alias such as "*plate" repeats what stands at its anchor. A text may use 1,000 of them; the ones beyond are not read. Write shared bodies and parts once under "masses" or "parts" and refer to them by name instead.',
  },
  'invisible-character': {
    title: 'A character that cannot be seen',
    explanation:
      'Control characters, zero-width characters, marks that change the reading direction, and no-break spaces in the indentation look like nothing or like a space, but are neither. They usually come from copying out of a web page or a PDF. The fix removes them, or puts ordinary spaces in their place.',
  },
  'lone-carriage-return': {
    title: 'Lines end with a lone carriage return',
    explanation:
      'The text uses the line ends of very old systems, which YAML does not know: it would see a single line. It is read as if every line ended properly, but save it with LF or CR LF line ends.',
  },
  'unfinished-merge': {
    title: 'A merge was not finished',
    explanation:
      'The version control system left both versions of some lines between marks. Until one of them is chosen, the first version is read and the other one ignored; everything outside the marks is checked as usual.',
  },
  'several-documents': {
    title: 'A second document begins in the file',
    explanation:
      'A line of three hyphens or three dots ends the YAML document. A description is one document, so what follows is not read. Remove the line, or move what follows into a file of its own.',
  },
  'yaml-version': {
    title: 'The file asks for another version of YAML',
    explanation:
      'A "%YAML" line asks for a version other than 1.2. In the older one, words such as "no" and "on" become true or false and 12:30 becomes a number, so that the same text means something else elsewhere. Descriptions are YAML 1.2; remove the line.',
  },
  'directive-unknown': {
    title: 'A line that begins with % before the document',
    explanation: 'Lines that begin with a percent sign before the document instruct a YAML reader. None of them is needed or obeyed here. Remove the line.',
  },
  'tag-used': {
    title: 'A YAML tag',
    explanation:
      'Words that begin with an exclamation mark, such as "!!binary", tell a YAML reader to convert the value to another type. Here the key alone decides what a value means, so tags are refused. Remove the tag; if the exclamation mark belongs to the text, put the text in quotes.',
  },
  'merge-key': {
    title: 'The merge key <<',
    explanation:
      'The key "<<" copies entries of one map into another in some YAML readers; YAML 1.2 does not have it, and it hides where a value comes from. Write the entries out, or give the shared body or part a name and refer to it.',
  },
  'anchor-unknown': {
    title: 'An alias without its anchor',
    explanation: 'An alias such as "*plate" repeats what was marked "&plate" on an earlier line. There is no such mark before this line.',
  },
  'alias-inside-itself': {
    title: 'An alias inside what it stands for',
    explanation: 'The alias repeats an entry that contains this very alias, so there would be no end to it. Refer to something outside.',
  },
  'anchor-name-missing': {
    title: 'An anchor or alias without a name',
    explanation:
      'A value that begins with "*" or "&" refers to another place in the file, and the name must follow at once. If the sign belongs to the text, put the text in quotes.',
  },
  // Slips of the pen
  'key-twice': {
    title: 'The same key twice',
    explanation: 'Two entries of one map have the same key. The first one counts, the second is ignored. Remove or rename one of them.',
  },
  'colon-missing': {
    title: 'A key without its colon',
    explanation: 'A line holds a word where a key is due, but no colon follows. Write the colon, then a space and the value, or the entries below it, two spaces in.',
  },
  'space-after-colon-missing': {
    title: 'No space after the colon',
    explanation: 'A colon separates a key from its value only when a space or the end of the line follows: "mass: 5 kg", not "mass:5 kg".',
  },
  'space-after-dash-missing': {
    title: 'No space after the dash of a list',
    explanation: 'A dash begins an item of a list only when a space follows: "- plate", not "-plate".',
  },
  'dash-missing': {
    title: 'An item of a list without its dash',
    explanation: 'The line stands among the items of a list, each of which begins with a dash and a space, but has none.',
  },
  'two-keys-on-one-line': {
    title: 'Two keys on one line',
    explanation:
      'A line holds a key, a colon, and then a second key with a colon. The second belongs on its own line below, two spaces further in. A text that contains a colon followed by a space must stand in quotes.',
  },
  'quote-open': {
    title: 'A quote that is not closed',
    explanation: 'A value begins with a quotation mark and the matching one is missing. It is read up to the end of its line, so that the entries below are still checked.',
  },
  'bracket-open': {
    title: 'A bracket that is not closed',
    explanation: 'A "{" or "[" has no partner. It is read as if it were closed before the next entry, so that the entries below are still checked.',
  },
  'bracket-missing': {
    title: 'An opening bracket is missing',
    explanation: 'Several entries stand on one line and end with a closing brace, but no opening one stands before the first of them.',
  },
  'bracket-stray': {
    title: 'A closing bracket without its opening one',
    explanation: 'A "}" or "]" closes nothing. Remove it, or add the missing opening one.',
  },
  'comma-missing': {
    title: 'A comma is missing between entries in brackets',
    explanation: 'Inside "{ }" and "[ ]" the entries are separated by commas, on one line or on several.',
  },
  'comma-stray': {
    title: 'A comma with nothing before it',
    explanation: 'Inside "{ }" and "[ ]" an entry must stand before each comma. Remove the extra one.',
  },
  'indent-wrong': {
    title: 'The indentation does not fit',
    explanation:
      'What belongs together starts in the same column; what belongs to a key stands below it, two spaces further in. This line fits neither the entry above nor its neighbours.',
  },
  'tab-as-indent': {
    title: 'Tabs as indentation',
    explanation: 'YAML does not allow tabs at the beginning of a line, because their width differs from editor to editor. Use two spaces for each level.',
  },
  'value-start-reserved': {
    title: 'A value begins with a reserved sign',
    explanation: 'The signs @, ` and % cannot begin a value without quotes. Put the value in quotes.',
  },
  'escape-unknown': {
    title: 'An unknown escape in double quotes',
    explanation:
      'In double quotes a backslash introduces a special character, such as \\n or \\u00b5. This combination means nothing. Write the backslash twice, or use single quotes, in which a backslash is an ordinary character.',
  },
  'key-not-a-word': {
    title: 'A key that is not a plain word',
    explanation: 'Keys are words. A map, a list, an alias or nothing at all cannot be a key.',
  },
  'text-not-understood': {
    title: 'The text does not follow the rules of YAML',
    explanation: 'The reader could not make sense of this place. The usual causes are a missing colon, quote or comma, or an indentation that does not fit, here or on the line above.',
  },
  'more-problems': {
    title: 'More problems than are listed',
    explanation: 'Only the first 200 problems of a file are listed, since they often share one cause, and after 1,000 the rest of the file is not read. The others appear once these are cured.',
  },
  // Structure
  'key-unknown': {
    title: 'An entry that is not known here',
    explanation: 'The key has no meaning at this place: it is misspelt, or belongs elsewhere. The nearest keys are offered; the reference lists all of them.',
  },
  'entry-missing': {
    title: 'A required entry is missing',
    explanation: 'Nothing can be computed here without this entry. The finding stands at the key whose entries are incomplete.',
  },
  'value-missing': {
    title: 'A key without a value',
    explanation: 'The key is there, but nothing follows it. Write a value, or remove the key.',
  },
  'value-of-wrong-type': {
    title: 'A value of another shape than expected',
    explanation: 'A map of entries, a list, a number or a plain text is due here, and something else stands there.',
  },
  'value-not-in-list': {
    title: 'A word that is not one of the choices',
    explanation: 'Only certain words are allowed for this key. The nearest ones are offered; the reference lists all of them with their meaning.',
  },
  'value-out-of-form': {
    title: 'A text of another form than expected',
    explanation: 'The text must follow a certain form, which the description of the key shows.',
  },
  'value-out-of-bounds': {
    title: 'A number or a count outside its bounds',
    explanation: 'The value, or the number of items, is smaller or larger than can be meant here.',
  },
  'entries-contradict': {
    title: 'Entries that exclude one another',
    explanation: 'Exactly one of several entries may be given here. Keep the one that describes the machine.',
  },
  // Quantities
  'unit-missing': {
    title: 'A number without its unit',
    explanation: 'Every physical value carries its unit, since a bare number could be millimetres or inches. The tool never guesses one. Write it after the number.',
  },
  'unit-unknown': {
    title: 'An unknown unit',
    explanation: 'The unit is not in the vocabulary. Prefixes and inch units of the trade are known, upper and lower case differ ("mN" is not "MN"). The nearest unit is offered.',
  },
  'unit-of-wrong-kind': {
    title: 'A unit of the wrong kind',
    explanation: 'The unit measures something else than the key asks for, such as a mass where a force is due. Check the unit; the number may have to change with it.',
  },
  'unit-ambiguous': {
    title: 'Several units after a slash',
    explanation: 'After a slash it is not clear whether a following unit still belongs to the denominator: readers differ. Put the denominator in brackets, as in "µm/(m·K)", or use one slash for each unit.',
  },
  'not-a-number': {
    title: 'No number where a quantity is due',
    explanation: 'A quantity begins with a number: "420 mm", "1/4 in", "0.12 ± 0.03", "6.4 kg ± 5 %" or "0.08 to 0.15".',
  },
  'decimal-comma': {
    title: 'A comma or another separator in a number',
    explanation: 'Decimals are written with a point and thousands are not separated, since a comma means one thing in one country and another thing elsewhere.',
  },
  'range-with-dash': {
    title: 'A range written with a dash',
    explanation: 'A dash could be a minus sign. A range is written with the word "to": "0.08 to 0.15".',
  },
  'range-reversed': {
    title: 'A range whose first end is the larger one',
    explanation: 'A range goes from the smaller to the larger value. Written the other way round, one of its ends is probably mistyped.',
  },
  'quantity-not-understood': {
    title: 'A quantity that cannot be read',
    explanation: 'A quantity is a number and a unit, with a tolerance or a second end if need be: "420 mm", "6.4 kg ± 5 %", "6.2 kg ± 0.2 kg", "0.08 to 0.15". Something else stands before, between or after.',
  },
  'quantity-too-long': {
    title: 'A quantity longer than 80 characters',
    explanation: 'A number, its tolerance and its unit fit in 80 characters. Remarks go behind a "#".',
  },
  'value-out-of-domain': {
    title: 'A value that cannot be',
    explanation: 'The quantity cannot have this value: a length, a mass or a resistance is not negative, a temperature is not below absolute zero, and a travel, a pitch or a resistance is not zero.',
  },
  'magnitude-implausible': {
    title: 'A value that is unusual in size',
    explanation:
      'The value is far outside of what such an entry usually has, often because of a slipped prefix or unit. It is asked, not asserted: if it is meant, keep it; everything is computed with it.',
  },
} as const satisfies Record<string, ProblemCode>;

export type ProblemCodeName = keyof typeof problemCodes;
