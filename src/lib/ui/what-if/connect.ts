import type { OutlookInput } from '#lib/model/outlook.ts';
import type { FromWorker } from './protocol.ts';
import type { Connect, Line } from './session.svelte.ts';

/** The way to the model in a worker of its own, with the lake's data from `inputUrl`. */
export function workerAt(inputUrl: string): Connect {
	return async () => {
		const response = await fetch(inputUrl);
		if (!response.ok)
			throw new Error(`the lake's weather did not come (status ${response.status})`);
		const input = (await response.json()) as OutlookInput;
		const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
		worker.postMessage({ kind: 'input', input });
		return lineTo(worker);
	};
}

function lineTo(worker: Worker): Line {
	let asked = 0;
	return {
		post(message) {
			if (message.kind === 'ask') asked = message.id;
			worker.postMessage(message);
		},
		onAnswer(listen) {
			worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => listen(data));
			worker.addEventListener('error', () =>
				listen({ kind: 'failed', id: asked, message: 'the model stopped in this browser' })
			);
		},
		close() {
			worker.terminate();
		}
	};
}
