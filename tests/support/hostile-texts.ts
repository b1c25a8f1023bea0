/** What somebody may type as a name, a place or a remark to do harm with it, and what it is stored as. */
const HOSTILE_TEXTS: Record<string, { typed: string; stored?: string }> = {
	script: { typed: '<script>window.ran=1</script>' },
	'end of script': { typed: '</script><script>window.ran=1</script>' },
	'end of title': { typed: '</title></textarea><svg onload=window.ran=1>' },
	'quote and handler': { typed: `"'><img src=x onerror=window.ran=1>` },
	template: { typed: '{{constructor.constructor("window.ran=1")()}}${window.ran=1}' },
	comment: { typed: '<!--><script>window.ran=1</script>--!>]]>' },
	'made of entities': { typed: '&lt;script&gt;window.ran=1&lt;/script&gt;&#60;b&#62;' },
	address: { typed: 'javascript:window.ran=1' },
	formula: { typed: '=HYPERLINK("https://elsewhere.example","x")' },
	'formula after a quote': { typed: "'@SUM(1+1)*cmd|' /C calc'!A0" },
	'calendar lines': {
		typed: 'a\r\nEND:VEVENT\nX:1;b,c\\d',
		stored: 'a END:VEVENT X:1;b,c\\d'
	},
	'header lines': { typed: 'a"\r\nset-cookie: x=1', stored: 'a" set-cookie: x=1' },
	'turned writing': { typed: 'ice \u202egnp.exe\u2066', stored: 'ice gnp.exe' },
	nul: { typed: 'a\u0000b\u0007', stored: 'a b' },
	'half a letter': { typed: 'a\ud800b', stored: 'a\ufffdb' },
	prototype: { typed: '__proto__' },
	constructor: { typed: 'constructor' },
	'path upward': { typed: '../../etc/passwd' },
	sql: { typed: "'; DROP TABLE lake; --" },
	emoji: { typed: '🧊👩‍👩‍👧‍👦é̀' },
	'from right to left': { typed: 'אגם קפוא' }
};

export const hostile = Object.entries(HOSTILE_TEXTS).map(
	([what, { typed, stored }]) => [what, typed, stored ?? typed] as const
);
