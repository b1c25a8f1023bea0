let forgotten = false;

/** Somebody has let go of all on this device: this page begins nothing anew, the next one may. */
export function setForgotten(): void {
	forgotten = true;
}

export function isForgotten(): boolean {
	return forgotten;
}
