import type { IsoDate } from '#lib/model/calendar.ts';
import type { OutlookInput } from '#lib/model/outlook.ts';
import type { Reading } from '#lib/model/reading.ts';
import type { ReadingsEffect } from '#lib/model/readings-effect.ts';
import type { Units } from '../units-setting.ts';
import type { FromWorker, ToWorker } from '../what-if/protocol.ts';

/** The model on this device, with a site's input: from the server, or as it is kept here. */
export class EffectModel {
	#worker: Promise<Worker> | null = null;
	#inputUrl: string;
	#asked = 0;

	constructor(inputUrl: string) {
		this.#inputUrl = inputUrl;
	}

	/**
	 * What readings that the server does not have change of the estimate; `null` where there is none.
	 * @throws Error where the input is not to be had
	 */
	async ask(more: readonly Reading[], units: Units): Promise<ReadingsEffect | null> {
		this.#worker ??= this.#open();
		const worker = await this.#worker.catch((cause: unknown) => {
			// So that the next reading tries anew.
			this.#worker = null;
			throw cause;
		});
		const id = ++this.#asked;
		const message: ToWorker = { kind: 'readings', id, more: [...more], units };
		return new Promise((done, fail) => {
			const listen = ({ data }: MessageEvent<FromWorker>) => {
				if (data.id !== id) return;
				worker.removeEventListener('message', listen);
				if (data.kind === 'effect') done(data.effect);
				else fail(new Error(data.kind === 'failed' ? data.message : 'another answer came'));
			};
			worker.addEventListener('message', listen);
			worker.addEventListener('error', () => fail(new Error('the model stopped here')), {
				once: true
			});
			worker.postMessage(message);
		});
	}

	/** Runs it once for nothing, so that the first hole is answered as soon as the others. */
	async warm(on: IsoDate, units: Units): Promise<void> {
		const seen = { id: 'warm', on, place: null, kind: 'wentThrough', holes: [] } as const;
		const nothing = { ...seen, holes: [], core: null, by: null, secondHand: false, remark: null };
		await this.ask([nothing], units).catch(() => null);
	}

	close(): void {
		void this.#worker?.then((worker) => worker.terminate()).catch(() => undefined);
		this.#worker = null;
	}

	async #open(): Promise<Worker> {
		const response = await fetch(this.#inputUrl);
		if (!response.ok) throw new Error(`the input of the model did not come (${response.status})`);
		const input = (await response.json()) as OutlookInput;
		const worker = new Worker(new URL('../what-if/worker.ts', import.meta.url), { type: 'module' });
		worker.postMessage({ kind: 'input', input } satisfies ToWorker);
		return worker;
	}
}
