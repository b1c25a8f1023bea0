/*
 * Loaded before the app: its clock goes on from `CLOCK_AT`, so that a test has its season whenever it
 * runs. Only what asks for the time is moved; timers and the monotonic clock stay.
 */
const Real = Date;
const shift_ms = Real.parse(process.env.CLOCK_AT ?? '') - Real.now();

globalThis.Date = class Date extends Real {
	constructor(...parts) {
		if (parts.length === 0) super(Real.now() + shift_ms);
		else super(...parts);
	}

	static now() {
		return Real.now() + shift_ms;
	}
};
