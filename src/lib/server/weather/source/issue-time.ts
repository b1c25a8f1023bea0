/** When an answer was made. */
export interface IssueTime {
	/** Never in the future. */
	at: Date;
	/** Whether the answer itself says it. */
	isTold: boolean;
}

export interface Told {
	/** By the answer itself. */
	told: Date | null;
	lastModified: Date | null;
	/** By the clock of who sent it. */
	sentAt: Date | null;
}

/**
 * By the answer, else by its Last-Modified, else now; never later than now, nor than it was sent: this
 * machine's clock may be ahead, or a cache may have kept it. A page that a service does not renew is as
 * old as it was when it last changed, however often it is fetched.
 */
export function issueTime({ told, lastModified, sentAt }: Told, now: Date): IssueTime {
	const made = told ?? lastModified ?? now;
	const at = [made, now, ...(sentAt ? [sentAt] : [])].reduce((a, b) => (a < b ? a : b));
	return { at, isTold: told !== null };
}
