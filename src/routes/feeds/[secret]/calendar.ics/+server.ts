import { feedHandler } from '../../answer.ts';

export const GET = feedHandler('calendar');
