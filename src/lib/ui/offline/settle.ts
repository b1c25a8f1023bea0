import { sendWaiting } from './send-waiting.ts';
import { dropWaiting, putWaiting, type Waiting } from './waiting.ts';

/** Leaves what stands on the server; mine is kept there among the other versions. */
export async function keepTheirs({ id, lake, changes, theirs }: Waiting): Promise<void> {
	if (theirs?.aside && changes) {
		const address = `/api/v1/lakes/${lake.id}/readings/${changes.readingId}/versions/${theirs.aside}`;
		// Without an answer it goes on waiting there, where somebody may choose as well.
		await fetch(address, { method: 'DELETE' }).catch(() => null);
	}
	await dropWaiting(id);
}

/** Sends mine over the version that I have been shown; over a still newer one it is asked about again. */
export async function sendMine(entry: Waiting): Promise<void> {
	const { changes, theirs } = entry;
	if (!changes || !theirs) return;
	await putWaiting({
		...entry,
		changes: { ...changes, version: theirs.version },
		state: 'waiting',
		theirs: null
	});
	await sendWaiting();
}
