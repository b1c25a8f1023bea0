/** What comes within a time; `null` where nothing does, or it fails. Without a limit it is waited for. */
export async function within<What>(coming: Promise<What>, limit_ms?: number): Promise<What | null> {
	let timer: ReturnType<typeof setTimeout> | undefined;
	const tooLate = new Promise<null>((done) => {
		if (limit_ms !== undefined) timer = setTimeout(() => done(null), limit_ms);
	});
	const answer = await Promise.race([coming.catch(() => null), tooLate]);
	clearTimeout(timer);
	return answer;
}
