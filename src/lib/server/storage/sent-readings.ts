import type { Kysely, Transaction } from 'kysely';
import { joinedHoles } from '#lib/model/joined-holes.ts';
import type { Reading } from '#lib/model/reading.ts';
import { contentOf, replaceVersionIn } from './reading-versions.ts';
import { findReading, writeReadings } from './readings.ts';
import type { Database } from './schema.ts';

/** A reading on its way in. */
export interface SentReading {
	/** Made by whoever sends it, to be the same each time it is sent; `null` where there is none. */
	clientId: string | null;
	/** The stored reading that its holes belong to, or the client id that one came under. */
	joins: { reading: string } | { clientId: string } | null;
	/** With the id it is given where it joins none. */
	reading: Reading;
}

/** Another reading came under the same client id before. */
export interface OtherContent {
	clientId: string;
}

interface Owner {
	lakeId: string;
	site: string;
	at: Date;
}

/** As many as a reading may have. */
const MOST_HOLES = 100;

/**
 * Stores what was sent, each once however often it comes, and returns the ids of the readings that hold
 * it. All or none: where a client id has come with something else before, nothing is stored.
 */
export async function storeSent(
	db: Kysely<Database>,
	owner: Owner,
	sent: readonly SentReading[]
): Promise<string[] | OtherContent> {
	try {
		return await db.transaction().execute(async (tx) => {
			const ids: string[] = [];
			for (const each of sent) ids.push(await storeOnce(tx, owner, each));
			return ids;
		});
	} catch (cause) {
		if (cause instanceof Taken) return { clientId: cause.clientId };
		throw cause;
	}
}

/** Breaks the transaction off. */
class Taken extends Error {
	override name = 'Taken';
	readonly clientId: string;

	constructor(clientId: string) {
		super(`the client id ${clientId} is taken`);
		this.clientId = clientId;
	}
}

async function storeOnce(
	tx: Transaction<Database>,
	owner: Owner,
	{ clientId, joins, reading }: SentReading
): Promise<string> {
	const content = `${owner.lakeId} ${owner.site} ${contentOf({ ...reading, id: '' })}`;
	if (clientId !== null) {
		const before = await findSent(tx, clientId);
		if (before && before.content !== content) throw new Taken(clientId);
		if (before) return before.reading_id;
	}
	const id = await joinOrInsert(tx, owner, { joins, reading });
	if (clientId !== null) {
		const row = { client_id: clientId, lake_id: owner.lakeId, reading_id: id, content };
		await tx.insertInto('sent_reading').values(row).execute();
	}
	return id;
}

async function joinOrInsert(
	tx: Transaction<Database>,
	{ lakeId, site, at }: Owner,
	{ joins, reading }: Pick<SentReading, 'joins' | 'reading'>
): Promise<string> {
	const earlier = joins && (await joinable(tx, { lakeId, site }, joins));
	const joined = earlier && joinedHoles(earlier.reading, reading);
	if (earlier && joined && joined.holes.length <= MOST_HOLES) {
		const { version } = earlier;
		await replaceVersionIn(tx, lakeId, { reading: joined, version, at });
		return joined.id;
	}
	await writeReadings(tx, { lakeId, site, createdAt: at }, [reading]);
	return reading.id;
}

async function joinable(
	tx: Transaction<Database>,
	{ lakeId, site }: { lakeId: string; site: string },
	joins: NonNullable<SentReading['joins']>
): Promise<{ reading: Reading; version: number } | null> {
	const id = 'reading' in joins ? joins.reading : (await findSent(tx, joins.clientId))?.reading_id;
	const found = id === undefined ? null : await findReading(tx, lakeId, id);
	return found && !found.isDeleted && found.site === site ? found : null;
}

async function findSent(tx: Transaction<Database>, clientId: string) {
	return tx
		.selectFrom('sent_reading')
		.select(['reading_id', 'content'])
		.where('client_id', '=', clientId)
		.executeTakeFirst();
}
