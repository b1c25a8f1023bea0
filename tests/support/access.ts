import type { Viewer } from '../../src/lib/server/services/access/viewer.ts';

export const PASSPHRASE = 'crane kettle umber lattice';

/** One of each who may look, at the lake `pond`. */
export const VIEWERS = {
	owner: { role: 'owner', way: 'session' },
	helper: { role: 'helper', way: 'session', id: 'p-1', name: 'Invented Helper' },
	guest: { role: 'guest', way: 'session', lake: 'pond', seesPlaces: false },
	guestWithPlaces: { role: 'guest', way: 'session', lake: 'pond', seesPlaces: true },
	stranger: { role: 'stranger', way: 'none' }
} as const satisfies Record<string, Viewer>;

export type Who = keyof typeof VIEWERS;
