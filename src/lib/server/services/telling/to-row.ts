import { randomUUID } from 'node:crypto';
import type { Message } from '#lib/model/telling/message.ts';
import type { MessageRow } from '../../storage/telling-messages.ts';

/** A message as it is stored, with an id of its own that it keeps by all ways. */
export function toRow(
	lakeId: string,
	message: Message,
	now: string,
	readingId: string | null = null
): MessageRow {
	return {
		id: randomUUID(),
		lake_id: lakeId,
		reading_id: readingId,
		kind: message.kind,
		load_id: message.loadId,
		about_day: message.on,
		title: message.title,
		text: message.text,
		made_at: now,
		changed_at: now
	};
}
