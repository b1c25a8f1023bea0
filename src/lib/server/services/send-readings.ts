import { z } from 'zod';
import type { Context } from '../context.ts';
import { storeSent, type SentReading } from '../storage/sent-readings.ts';
import { newId } from './ids.ts';
import { refuseAhead } from './not-ahead.ts';
import { readingInput, readingShape, reportMissingHoles } from './reading-input.ts';
import { getSite } from './sites.ts';
import { nudgeTelling } from './telling/nudge.ts';

const clientId = z
	.uuid()
	.transform((id) => id.toLowerCase())
	.exactOptional();

/** A reading with what its sender calls it. */
export const sentReading = z
	.strictObject({
		...readingShape.shape,
		clientId: clientId.meta({
			description: 'Made by the sender: what is sent twice under the same id is stored once'
		}),
		joins: clientId.meta({
			description:
				'Client id of an earlier hole of the same visit: its holes join that reading, where place, day and way are the same'
		})
	})
	.superRefine(reportMissingHoles)
	.meta({ id: 'SentReading' });

/** The client id among a form's fields; `null` where a browser has made none. */
export function clientIdIn(values: Readonly<Record<string, string>>): string | null {
	return clientId.safeParse(values['clientId']).data ?? null;
}

export type SentInput = z.output<typeof sentReading>;

/** The same client id came with another reading before. */
export class ClientIdTaken extends Error {
	override name = 'ClientIdTaken';
	readonly clientId: string;

	constructor(clientId: string) {
		super(
			`The client id ${clientId} has come with another reading before, which is stored and stays; send this one under an id of its own`
		);
		this.clientId = clientId;
	}
}

/**
 * Stores all of them or none, each client id once however often it comes; the ids of the readings that
 * hold them come back in the same order. @throws LakeNotFound, SiteNotFound, ClientIdTaken; ZodError
 * for a day to come
 */
export async function sendReadings(
	ctx: Context,
	lakeId: string,
	site: string,
	sent: readonly SentInput[]
): Promise<string[]> {
	const rows = sent.map(({ clientId, joins, ...reading }) => ({
		clientId: clientId ?? null,
		joins: joins === undefined ? null : { clientId: joins },
		reading: { id: newId('r'), ...readingInput.parse(reading) }
	}));
	return storeEach(ctx, lakeId, site, rows);
}

/** The same for readings that are checked already. */
export async function storeEach(
	ctx: Context,
	lakeId: string,
	site: string,
	rows: readonly SentReading[]
): Promise<string[]> {
	await getSite(ctx, lakeId, site);
	await refuseAhead(
		ctx,
		lakeId,
		rows.map(({ reading }) => reading)
	);
	const stored = await storeSent(ctx.db, { lakeId, site, at: ctx.now() }, rows);
	if (!Array.isArray(stored)) throw new ClientIdTaken(stored.clientId);
	nudgeTelling(ctx, lakeId);
	return stored;
}
