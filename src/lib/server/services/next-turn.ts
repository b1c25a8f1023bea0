/** Lets requests that wait be answered before long work goes on. */
export function nextTurn(): Promise<void> {
	return new Promise((resolve) => {
		setImmediate(resolve);
	});
}
