import { countDrafts } from './draft.ts';
import { forgetAll, forgetPages, listOnDevice, whyNothing, type OnDevice } from './on-device.ts';
import { WaitingHere } from './waiting-here.svelte.ts';

/** What a page about this device shows, once its script runs. */
export class DeviceState {
	kept = $state.raw<OnDevice | null>(null);
	/** Why nothing is kept; `null` where it is. */
	why = $state<string | null>(null);
	/** By the browser's own count, the packing of its storage included; `null` where it does not tell. */
	room_bytes = $state<number | null>(null);
	drafts = $state(0);
	said = $state('');
	waiting = new WaitingHere();

	/** For `{@attach}`. */
	follow = () => {
		void this.look();
		return this.waiting.follow();
	};

	async look(): Promise<void> {
		this.why = whyNothing();
		this.drafts = countDrafts();
		if (this.why === null) this.kept = await listOnDevice();
		const { usage } = (await navigator.storage?.estimate?.()) ?? {};
		this.room_bytes = usage ?? null;
	}

	async forgetPages(): Promise<void> {
		await forgetPages();
		this.said = 'The copies are gone. Those of a lake come back when it is opened again.';
		await this.look();
	}

	async forgetAll(): Promise<void> {
		await forgetAll();
		this.waiting.entries = [];
		this.said = 'Nothing is kept on this device any more.';
		await this.look();
	}
}
