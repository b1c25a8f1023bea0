import { sql } from 'kysely';
import { expect, onTestFinished, test } from 'vitest';
import { openDatabase } from '../../../src/lib/server/storage/database.ts';
import { isLeaseHeld, takeLease } from '../../../src/lib/server/storage/leases.ts';

const SPAN_S = 30;

/** A lease that somebody took before the database's clock was set back by two days. */
async function takenAhead() {
	const db = await openDatabase(':memory:');
	onTestFinished(() => db.destroy());
	await takeLease(db, 'telling', 'first', SPAN_S);
	const shift = (by_s: number) => sql`UPDATE lease SET until_s = until_s + ${by_s}`.execute(db);
	await shift(172_800);
	return { db, shift };
}

test('a holder that died before a clock was set back keeps nobody from the work for days', async () => {
	const { db, shift } = await takenAhead();
	expect(await takeLease(db, 'telling', 'second', SPAN_S)).toBe(false);
	expect(await isLeaseHeld(db, 'telling')).toBe(true);
	await shift(-SPAN_S - 1);
	expect(await takeLease(db, 'telling', 'second', SPAN_S)).toBe(true);
});

test('one that lives keeps its lease when a clock is set back', async () => {
	const { db, shift } = await takenAhead();
	expect(await takeLease(db, 'telling', 'second', SPAN_S)).toBe(false);
	await shift(-5);
	expect(await takeLease(db, 'telling', 'first', SPAN_S)).toBe(true);
	await shift(-SPAN_S + 5);
	expect(await takeLease(db, 'telling', 'second', SPAN_S)).toBe(false);
});
