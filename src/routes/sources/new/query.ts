/** What the page is asked for, behind the name of a form action. @example queryOf('a', 1) // => '&from=a&address=1' */
export function queryOf(from: string | null, address: number): string {
	return from === null ? '' : `&from=${encodeURIComponent(from)}&address=${address}`;
}
