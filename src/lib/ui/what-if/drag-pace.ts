/** Of how many members a quick answer is, while something is dragged. */
const DRAG_MEMBERS = 100;
/** The same on a device that is too slow for those. */
const FEWER_MEMBERS = 50;
/** An answer that takes longer lags behind the finger. */
const FRAME_ms = 50;
/** The first answers are slow anywhere: the model has to get to today, and warm. */
const SLOW_IN_A_ROW = 8;

/** Chooses how many members a quick answer has by how long the ones before took. */
export class DragPace {
	members = DRAG_MEMBERS;
	#slow = 0;

	took(duration_ms: number): void {
		this.#slow = duration_ms > FRAME_ms ? this.#slow + 1 : 0;
		if (this.#slow >= SLOW_IN_A_ROW) this.members = FEWER_MEMBERS;
	}
}
