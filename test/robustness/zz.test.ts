import { appendFileSync } from 'node:fs';
import { test } from 'vitest';
import { parseText } from '../../server/src/language/parse-text.ts';
import { cases } from './hostile-texts.test.ts';
test('z',{timeout:1e6},()=>{ for(const c of cases){ appendFileSync('/tmp/langprobe/log.txt', c.name+'\n'); const t=c.text(); const t0=performance.now(); const p=parseText(t); appendFileSync('/tmp/langprobe/log.txt', '   '+(performance.now()-t0).toFixed(0)+' ms '+[...new Set(p.problems.map(x=>x.code))]+'\n'); } });
