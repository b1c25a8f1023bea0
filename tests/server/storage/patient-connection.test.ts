import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { sql } from 'kysely';
import { expect, onTestFinished, test } from 'vitest';
import { openDatabase } from '../../../src/lib/server/storage/database.ts';
import { giveUpLease, isLeaseHeld, takeLease } from '../../../src/lib/server/storage/leases.ts';

/** Two connections to one file, as two processes have them. */
async function two() {
	const folder = mkdtempSync(join(tmpdir(), 'frostledger-patient-'));
	const path = join(folder, 'frostledger.db');
	const [one, other] = [await openDatabase(path), await openDatabase(path)];
	onTestFinished(async () => {
		await Promise.all([one.destroy(), other.destroy()]);
		rmSync(folder, { recursive: true, force: true });
	});
	return [one, other] as const;
}

const note = (db: Awaited<ReturnType<typeof two>>[0], name: string) =>
	sql`INSERT INTO lease (name, holder, until_s) VALUES (${name}, 'test', 0)`.execute(db);

test('what wants to write waits for who writes elsewhere, and holds nobody up meanwhile', async () => {
	const [one, other] = await two();
	const order: string[] = [];
	let ticks = 0;
	const clock = setInterval(() => ticks++, 10);
	const long = one.transaction().execute(async (tx) => {
		await sql`INSERT INTO lease (name, holder, until_s) VALUES ('first', 'test', 0)`.execute(tx);
		await wait(600);
		order.push('first');
	});
	await wait(50);
	const short = note(other, 'second').then(() => order.push('second'));
	const whole = other
		.transaction()
		.execute((tx) => note(tx, 'third'))
		.then(() => order.push('third'));
	await Promise.all([long, short, whole]);
	clearInterval(clock);
	expect(order).toEqual(['first', 'second', 'third']);
	expect(ticks).toBeGreaterThan(2);
	const { rows } = await sql`SELECT name FROM lease ORDER BY name`.execute(one);
	expect(rows).toHaveLength(3);
});

test('a transaction that reads before it writes is not refused when another wrote in between', async () => {
	const [one, other] = await two();
	await note(one, 'a');
	const count = (db: typeof one) =>
		db.transaction().execute(async (tx) => {
			const { until_s } = await tx
				.selectFrom('lease')
				.select('until_s')
				.where('name', '=', 'a')
				.executeTakeFirstOrThrow();
			await wait(5);
			await tx
				.updateTable('lease')
				.set({ until_s: until_s + 1 })
				.where('name', '=', 'a')
				.execute();
		});
	await Promise.all(Array.from({ length: 20 }, (_, index) => count(index % 2 ? one : other)));
	const { rows } = await sql`SELECT until_s FROM lease WHERE name = 'a'`.execute(one);
	expect(rows).toEqual([{ until_s: 20 }]);
});

test('a statement that fails leaves nothing behind that the next would trip over', async () => {
	const [one, other] = await two();
	await note(one, 'a');
	await expect(note(one, 'a')).rejects.toThrow(/UNIQUE/);
	await note(other, 'b');
	await note(one, 'c');
	expect((await sql`SELECT name FROM lease`.execute(other)).rows).toHaveLength(3);
});

test('a lease is one holder’s until it ends or is given up', async () => {
	const [one, other] = await two();
	expect(await takeLease(one, 'work', 'first', 0.3)).toBe(true);
	expect(await takeLease(other, 'work', 'second', 30)).toBe(false);
	expect(await takeLease(one, 'work', 'first', 0.3)).toBe(true);
	expect(await isLeaseHeld(other, 'work')).toBe(true);
	await wait(350);
	expect(await isLeaseHeld(other, 'work')).toBe(false);
	expect(await takeLease(other, 'work', 'second', 30)).toBe(true);
	expect(await takeLease(one, 'work', 'first', 30)).toBe(false);
	await giveUpLease(one, 'work', 'first');
	expect(await isLeaseHeld(one, 'work')).toBe(true);
	await giveUpLease(other, 'work', 'second');
	expect(await takeLease(one, 'work', 'first', 30)).toBe(true);
});
