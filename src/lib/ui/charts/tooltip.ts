import type { TooltipItem } from 'chart.js';
import type { Palette } from './palette.ts';

/** What all pictures show when pointed at: the day, and the sentence each point carries. */
export function tooltip(palette: Palette) {
	return {
		backgroundColor: palette.sheet,
		borderColor: palette.line,
		borderWidth: 1,
		titleColor: palette.ink,
		bodyColor: palette.ink,
		titleFont: { family: palette.font, size: 14 },
		bodyFont: { family: palette.font, size: 14 },
		displayColors: false,
		filter: (item: TooltipItem<'line' | 'bar'>) => sentence(item) !== '',
		callbacks: { label: sentence }
	};
}

function sentence({ raw }: TooltipItem<'line' | 'bar'>): string {
	return typeof raw === 'object' && raw !== null && 'says' in raw ? String(raw.says) : '';
}
