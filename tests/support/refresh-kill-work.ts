/** When a job refreshes: three hours after the one before. */
export function refreshedAt(job: number): Date {
	return new Date(Date.parse('2026-12-01T00:10:00Z') + job * 3 * 3_600_000);
}
