/** When an answer was made. */
export interface IssueTime {
	/** Never in the future. */
	at: Date;
	/** Whether the answer itself says it. */
	isTold: boolean;
}

/**
 * By the answer, else by its Last-Modified, else now; never later than now. A page that a service does
 * not renew is as old as it was when it last changed, however often it is fetched.
 */
export function issueTime(told: Date | null, lastModified: Date | null, now: Date): IssueTime {
	const at = told ?? lastModified ?? now;
	return { at: at < now ? at : now, isTold: told !== null };
}
