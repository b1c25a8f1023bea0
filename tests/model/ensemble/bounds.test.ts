import { expect, test } from 'vitest';
import { boundsOf, NO_GAPS, noHolds } from '#lib/model/ensemble/bounds.ts';
import type { EnsembleDay } from '#lib/model/ensemble/run.ts';
import { emptyHoles } from '#lib/model/ensemble/spots.ts';
import { column, reading } from '../../support/invented-winter.ts';

const ICE = column({ clear_m: 0.3 });

/** Members that all agree. */
function holes(total_m: number, effective_m: number) {
	const of = emptyHoles(10);
	of.total_m.fill(total_m);
	of.effective_m.fill(effective_m);
	of.thinnest_m.fill(effective_m);
	return of;
}

test('the bound of what the ice counts as stays at or below that of the whole', () => {
	const read = reading('2027-01-10', [0.4]);
	const day = {
		before: holes(0.2, 0.2),
		beforeTold: null,
		recalibrations: [{ readingId: read.id, off: 1, isAskedAbout: false }]
	} as unknown as EnsembleDay;
	const later = { ...day, before: null, recalibrations: [] };
	const holds = noHolds();
	const first = boundsOf(day, [read], holds, holes(0.3, 0.25), ICE, NO_GAPS);
	expect(first.total_m).toBeCloseTo(0.2, 9);
	expect(first.spot_m).toBeCloseTo(0.2, 9);
	const next = boundsOf(later, [], holds, holes(0.28, 0.25), ICE, NO_GAPS);
	expect(next.total_m).toBeCloseTo(0.18, 9);
	expect([next.spot_m, next.fiveSpots_m]).toEqual([next.total_m, next.total_m]);
});
