import type { Message } from '#lib/model/telling/message.ts';
import type { MessageRow } from '../../../storage/telling-messages.ts';
import type { LakeRecord } from '../../lakes.ts';
import { toldName } from '../told-name.ts';

/** What a receiver is sent. `kind` is `test` for a message that tells nothing. */
export interface WebhookBody {
	/** The same at every try, so that the receiver can drop what it has had. */
	id: string;
	kind: Message['kind'] | 'test';
	/** When it became known; a try may be later. */
	madeAt: string;
	lake: { id: string; name: string };
	/** The site that it is about; `null` for the weather of the lake, and where none is known any more. */
	site: string | null;
	load: string | null;
	/** The reading that it tells of. */
	reading: string | null;
	/** The day that it is about, of the lake's own calendar. */
	on: string | null;
	title: string;
	text: string;
	/** The lake's page, where the app knows its own address. */
	link?: string;
}

export interface BodyFacts {
	lake: Pick<LakeRecord, 'id' | 'name' | 'isInvented'>;
	/** `FROSTLEDGER_ADDRESS`. */
	address: string | null;
}

export function bodyOf(
	row: Pick<
		MessageRow,
		'id' | 'made_at' | 'load_id' | 'reading_id' | 'about_day' | 'title' | 'text'
	> & {
		kind: string;
	},
	site: string | null,
	{ lake, address }: BodyFacts
): string {
	const body: WebhookBody = {
		id: row.id,
		kind: row.kind as WebhookBody['kind'],
		madeAt: row.made_at,
		lake: { id: lake.id, name: toldName(lake) },
		site,
		load: row.load_id,
		reading: row.reading_id,
		on: row.about_day,
		title: row.title,
		text: row.text,
		...(address === null ? {} : { link: `${address}/lakes/${lake.id}` })
	};
	return JSON.stringify(body);
}
