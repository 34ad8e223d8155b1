// The README's pictures of the editor, as the editor tests took them last.
import { copyFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './bundles.mjs';

const PICTURES = { 'readme.png': 'terrace.png', 'plan-of-terrace-light.png': 'live-plan.png' };

for (const [taken, shown] of Object.entries(PICTURES))
  copyFileSync(path.join(root, '.cache/screenshots', taken), path.join(root, 'extension/pictures', shown));
