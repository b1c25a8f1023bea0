/** Month names of English, German, Swedish and Norwegian, by their first three letters. */
const BY_START: Readonly<Record<string, number>> = {
	jan: 1,
	feb: 2,
	mar: 3,
	mär: 3,
	apr: 4,
	mai: 5,
	maj: 5,
	may: 5,
	jun: 6,
	jul: 7,
	aug: 8,
	sep: 9,
	oct: 10,
	okt: 10,
	nov: 11,
	dec: 12,
	des: 12,
	dez: 12
};

const NAMES =
	/^(jan(uary|uar|uari)?|feb(ruary|ruar|ruari)?|mar(ch|s|z)?|märz|mrz|apr(il)?|mai|maj|may|june?|juni|july?|juli|aug(ust|usti)?|sept?(ember)?|[o][ck]t(ober)?|nov(ember)?|de[csz](ember)?)$/;

/** @example monthOf('Sept') // => 9 */
export function monthOf(name: string): number | null {
	const lower = name.toLowerCase();
	if (!NAMES.test(lower)) return null;
	return lower === 'mrz' ? 3 : (BY_START[lower.slice(0, 3)] ?? null);
}
