import type { IsoDate } from '../calendar.ts';
import type { Position } from '../distance.ts';

/** What makes a place weaker than the open part of its site. */
export const WEAK_SPOT_KINDS = [
	'current',
	'inletOutlet',
	'narrows',
	'spring',
	'bogOrWeeds',
	'pressureRidge',
	'dockOrBubbler',
	'landing',
	'rocks',
	'crack',
	'drift',
	'brokeThrough'
] as const;

export type WeakSpotKind = (typeof WEAK_SPOT_KINDS)[number];

/** A place where the site's estimate does not hold. */
export interface WeakSpot {
	id: string;
	/** No other weak spot of the lake has it; readings whose place is called so are its own. */
	name: string;
	kind: WeakSpotKind;
	position: Position | null;
	/** When somebody last looked at it; its readings have days of their own. */
	checkedOn: IsoDate | null;
	remark: string | null;
}

const FLOWING: ReadonlySet<WeakSpotKind> = new Set(['current', 'inletOutlet', 'narrows', 'spring']);
const AT_SHORE: ReadonlySet<WeakSpotKind> = new Set(['landing', 'dockOrBubbler']);

/** True where water moves under the ice. */
export function isFlowing(kind: WeakSpotKind): boolean {
	return FLOWING.has(kind);
}

/** True where the ice hangs on the shore. */
export function isAtShore(kind: WeakSpotKind): boolean {
	return AT_SHORE.has(kind);
}
