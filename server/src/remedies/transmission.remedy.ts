import type { Transmission } from '../machine/scopes.ts';
import { remedy, type Change } from './remedy.ts';

/** Keys of a drive that belong to one transmission alone. */
const KEYS: Readonly<Record<Transmission, readonly string[]>> = { screw: ['screw', 'nut'], belt: ['belt', 'pulley', 'idlers'], rack: ['rack', 'pinion'] };
const KINDS: readonly Transmission[] = ['screw', 'belt', 'rack'];

export default remedy({
  id: 'one-transmission',
  summary: 'Keeps one of the transmissions that are written and takes the others out.',
  cost: 1,
  cures: ['two-transmissions'],
  propose: ({ before, place }) => {
    const drive = place('drive');
    const written = KINDS.filter((kind) => before.choice('drive.transmissions-written')?.split(' and ').includes(kind));
    if (!drive) return [];
    const present = before.choice('drive.transmission');
    return written.map((kept) => {
      const gone = written.filter((kind) => kind !== kept);
      const changes = gone.flatMap((kind) => KEYS[kind]).map((key): Change => ({ place: { uri: drive.uri, path: [...drive.path, key] }, value: null }));
      // The one that is reckoned with stays as it is; with another one every figure changes.
      return { changes, what: `Keep the ${kept}, take the ${gone.join(' and the ')} out`, result: () => (kept === present ? 'all figures stay' : undefined), cost: kept === present ? 1 : 1.5 };
    });
  },
});
