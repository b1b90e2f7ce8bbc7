/** What a subject is called: `axes/lift/drive` is the axis lift, `axes/lift/drive-options/belt` one of its options. */
export function subjectTitle(subject: string): string {
  const [section, name = '', group, option] = subject.split('/');
  if (section === 'axes') return group === 'drive-options' ? `Axis ${name}, option ${option ?? ''}` : `Axis ${name}`;
  if (section === 'supplies') return `Supply ${name}`;
  return section === 'heating' ? `Heated part ${name}` : 'Machine';
}
