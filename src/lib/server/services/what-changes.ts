import type { OutlookInput } from '#lib/model/outlook.ts';
import { ContentCache } from './content-cache.ts';
import type { WhatChanges } from './estimates/changes-steps.ts';
import { estimate } from './estimates/estimate.ts';

export {
	COLD_WEEK_d,
	COLDER_K,
	type TriedId,
	type TriedLoad,
	type WhatChanges
} from './estimates/changes-steps.ts';

/** Each is small. */
const KEPT = 200;

const kept = new ContentCache<Promise<WhatChanges | null>>(KEPT);

/** `null` where nothing is estimated. `floodsWith_kg_m2` is the snow that the ice can float further. */
export function whatChanges(
	input: OutlookInput,
	floodsWith_kg_m2: number | null
): Promise<WhatChanges | null> {
	const content = [input, floodsWith_kg_m2];
	return kept.get(content, () => {
		const made = estimate({ kind: 'changes', content: { input, floodsWith_kg_m2 } });
		made.catch(() => kept.forget(content));
		return made;
	});
}
