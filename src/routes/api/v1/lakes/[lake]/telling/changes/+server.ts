import { feedEndpoints } from '../feed-endpoints.ts';

export const { POST, DELETE, fallback } = feedEndpoints('changes');
