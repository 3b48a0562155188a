/** µg/m³ of lead that the air of a workplace may hold on average over a working day of so many hours. */
import type { Source } from '../materials/types.ts';

export const LEAD_LIMIT_SOURCE: Source = {
  text: 'OSHA 29 CFR 1910.1025 (c) and appendix B: 50 µg/m³ over 8 hours, 400/hours for a longer day',
  mark: 'published',
};

export const leadLimit = (hours: number): number => (hours > 8 ? 400 / hours : 50);
