import { BALL_SCREW_SIZES } from '../catalogue/ball-screws.ts';
import { BELT_PROFILES, beltProfile } from '../catalogue/belt-profiles.ts';
import { MOTOR_FLANGES } from '../catalogue/motor-flanges.ts';
import { PROFILE_RAILS } from '../catalogue/profile-rails.ts';
import { STANDARD_THREADS } from '../catalogue/trapezoidal-threads.ts';
import { scalarText } from '../language/edit-entry.ts';
import { formatQuantity } from '../language/format-quantity.ts';
import { railSizeText } from '../machine/guide-rail-size.ts';
import type { Draft } from './completion-item.ts';
import { escapeMarkdown } from './markdown.ts';

const millimetres = (si: number): string => formatQuantity(si, 'length', { unit: 'mm' });

/** Modules of the first series of ISO 54 that small machines use, and 0.8 and 1.25 of it in between, mm. */
const MODULES = [0.5, 0.8, 1, 1.25, 1.5, 2, 2.5, 3] as const;

/** Tooth counts of pulleys and pinions that are commonly sold. */
const TEETH = [12, 14, 16, 18, 20, 24, 25, 28, 30, 32, 36, 40, 48, 60] as const;

/** Standard sizes of one kind; what the axis comes to with each is computed when it is looked at. `sibling` reads the map in which the size stands. */
export function sizeDrafts(kind: string, sibling: (key: string) => string | undefined): Draft[] {
  switch (kind) {
    case 'motor-frame':
      return frameDrafts();
    case 'screw':
      return screwDrafts();
    case 'belt-profile':
      return profileDrafts();
    case 'belt-width':
      return widthDrafts(sibling('profile'));
    case 'profile-rail':
      return railDrafts();
    case 'module':
      return MODULES.map((module) => size(`${module} mm`, 'standard module', 'Preferred modules of ISO 54, as remembered.'));
    case 'teeth':
      return TEETH.map((teeth) => size(String(teeth), 'a count that is commonly sold', ''));
    default:
      return [];
  }
}

function size(label: string, detail: string, documentation: string): Draft {
  return { label, kind: 'size', detail, documentation, insertText: scalarText(label, true), isSnippet: false, data: { tries: label } };
}

/** Standard threads and ball screws; those of the standard before others, thin ones first. */
function screwDrafts(): Draft[] {
  const threads = [...STANDARD_THREADS].sort((a, b) => Number(b.listedInStandard && b.preferred) - Number(a.listedInStandard && a.preferred));
  return [
    ...threads.map((row): Draft => ({
      label: row.designation, kind: 'size', detail: `lead ${millimetres(row.lead)}, root ${millimetres(row.rootDiameter)}`, insertText: row.designation, isSnippet: false, data: { tries: row.designation },
      documentation: `Trapezoidal thread, ${millimetres(row.majorDiameter)} outside, ${millimetres(row.pitch)} pitch, ${row.starts === 1 ? 'one start' : `${row.starts} starts`}. ${escapeMarkdown(row.source)}`,
    })),
    ...BALL_SCREW_SIZES.map((row): Draft => {
      const designation = `${Math.round(row.nominalDiameter * 1000)}${String(Math.round(row.lead * 1000)).padStart(2, '0')}`;
      return {
        label: designation, kind: 'size', detail: `ball screw, lead ${millimetres(row.lead)}`, insertText: designation, isSnippet: false, data: { tries: designation },
        documentation: `Ball screw of ${millimetres(row.nominalDiameter)} nominal diameter. It runs back under load. ${escapeMarkdown(row.source)}`,
      };
    }),
  ];
}

function profileDrafts(): Draft[] {
  return BELT_PROFILES.map((row) => size(row.profile, `pitch ${millimetres(row.pitch)}, ${row.teeth.recommended} teeth or more`, escapeMarkdown(`${row.title}. ${row.standard}`)));
}

/** The usual widths of the profile that stands beside; none while that is not known. */
function widthDrafts(profile: string | undefined): Draft[] {
  const row = profile === undefined ? undefined : beltProfile(profile);
  return row ? row.widths.values.map((width) => size(millimetres(width), `usual width of ${row.profile}`, escapeMarkdown(row.widths.source))) : [];
}

/** Rails by size; the form stands only where the number alone means another. */
function railDrafts(): Draft[] {
  return PROFILE_RAILS.map((row) => {
    const { low, high, source } = row.dynamicRating;
    const ratings = `${formatQuantity(low, 'force', { unit: 'kN' })} to ${formatQuantity(high, 'force', { unit: 'kN' })}`;
    return size(railSizeText(row), `${row.form} rail, ${millimetres(row.railWidth)} wide`, `Usual dynamic rating of a carriage ${ratings}. ${escapeMarkdown(source)}`);
  });
}

function frameDrafts(): Draft[] {
  return MOTOR_FLANGES.map((row) => ({
    label: `NEMA ${row.size}`, kind: 'size', detail: `face ${millimetres(row.flange[1])}, holes ${millimetres(row.holeSquare)} apart`,
    documentation: `The number fixes the mounting face, never the torque. ${escapeMarkdown(row.source)}`, insertText: `NEMA ${row.size}`, isSnippet: false,
  }));
}
