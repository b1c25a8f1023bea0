import { setImmediate as nextTurn } from 'node:timers/promises';

/**
 * How long work holds the process, in time of the processor, so that a busy machine is no fault: as a
 * whole, and at a stretch, in which no other request gets its turn.
 */
export class Turns {
	#isOn = false;
	#begun = process.cpuUsage();
	#last = process.cpuUsage();
	#longest_ms = 0;

	async begin(): Promise<void> {
		await nextTurn();
		this.#isOn = true;
		this.#longest_ms = 0;
		this.#begun = this.#last = process.cpuUsage();
		setImmediate(this.#look);
	}

	async end(): Promise<{ whole_ms: number; longest_ms: number }> {
		const whole_ms = since_ms(this.#begun);
		await nextTurn();
		this.#isOn = false;
		return { whole_ms, longest_ms: this.#longest_ms };
	}

	readonly #look = (): void => {
		this.#longest_ms = Math.max(this.#longest_ms, since_ms(this.#last));
		this.#last = process.cpuUsage();
		if (this.#isOn) setImmediate(this.#look);
	};
}

function since_ms(then: NodeJS.CpuUsage): number {
	const { user, system } = process.cpuUsage(then);
	return (user + system) / 1000;
}
