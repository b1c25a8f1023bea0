import type { IsoDate } from '#lib/model/calendar.ts';
import type { Context } from '../../context.ts';
import { listMessages } from '../../storage/telling-messages.ts';
import { getLake } from '../lakes.ts';

/** Something that was told. */
export interface ToldMessage {
	id: string;
	kind: string;
	/** The load that it is about; `null` when it is about the ice. */
	load: string | null;
	/** The day that it is about. */
	on: IsoDate | null;
	title: string;
	text: string;
	madeAt: Date;
	/** Later than `madeAt` where it was put right. */
	changedAt: Date;
}

/** What was told of a lake, the newest first. @throws LakeNotFound */
export async function toldMessages(
	ctx: Context,
	lakeId: string,
	limit: number
): Promise<ToldMessage[]> {
	await getLake(ctx, lakeId);
	const rows = await listMessages(ctx.db, lakeId, limit);
	return rows.map(({ id, kind, load_id, about_day, title, text, made_at, changed_at }) => ({
		id,
		kind,
		load: load_id,
		on: about_day,
		title,
		text,
		madeAt: new Date(made_at),
		changedAt: new Date(changed_at)
	}));
}
