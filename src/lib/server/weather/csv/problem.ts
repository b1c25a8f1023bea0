/** What is wrong with a line of the original file, metadata lines counted, and the remedy. */
export interface RowProblem {
	line: number;
	reason: string;
}
