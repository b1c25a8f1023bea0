import { listWaiting, onWaitingChanged, type Waiting } from './waiting.ts';

/** What waits on this device, kept up to date while a page shows it. */
export class WaitingHere {
	/** `null` until the device has been asked. */
	entries = $state.raw<readonly Waiting[] | null>(null);
	/** Nothing can be kept on this device. */
	isRefused = $state(false);

	#lakeId: string | undefined;
	#onFewer: () => void;
	/** Read while following, and so not reactive: following must not begin anew with each change. */
	#count = 0;

	constructor(lakeId?: string, onFewer: () => void = () => undefined) {
		this.#lakeId = lakeId;
		this.#onFewer = onFewer;
	}

	/** For `{@attach}`: follows along for as long as the page stands. */
	follow = () => {
		void this.#look();
		return onWaitingChanged(() => void this.#look());
	};

	async #look(): Promise<void> {
		try {
			const entries = await listWaiting(this.#lakeId);
			const areFewer = entries.length < this.#count;
			this.#count = entries.length;
			this.entries = entries;
			if (areFewer) this.#onFewer();
		} catch {
			this.isRefused = true;
			this.entries = [];
		}
	}
}
