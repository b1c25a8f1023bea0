/**
 * Words by which a text would sound like leave to step onto ice. `Stay off`, `expected` and the like are
 * none of them.
 */
const PERMISSIONS = [
	/\b(un)?safe(ly|ty|r|st)?\b/i,
	/\b(go|goes|going|went)\b/i,
	/\b(you|one|it|they|everybody|vehicles?|cars?|trucks?)\s+(can|may|could)\b/i,
	/\b(may|can|could|free|ready|fine|clear(ed)?|good) (to )?(be )?(driv|walk|rid|cross|park|carr|enter|step|us)/i,
	/\b(allowed|permitted|permission|approved|cleared|admitted|okay|ok|all[- ]clear|green light|go-ahead)\b/i,
	/\b(no (danger|risk|worry|worries)|risk[- ]free|harmless|secure|solid|sound ice|sure to (bear|carry|hold))\b/i,
	/\b(will|does|do) (carry|bear|hold)\b/i,
	/\b(open for|enjoy|welcome|have fun)\b/i
] as const;

/** What of a text sounds like leave, word by word. */
export function permissionsIn(text: string): string[] {
	return PERMISSIONS.flatMap((pattern) => pattern.exec(text)?.[0] ?? []);
}
