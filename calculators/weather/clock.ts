import { amount, sentence, type Sentence } from '../calculator.ts';

const two = (value: number): string => String(value).padStart(2, '0');

/** The hour of the clock, from 00:00 to 23:59: "22:00". Time from a midnight [s]. */
export function hourWords(time: number): string {
  const minutes = Math.round(time / 60) % (24 * 60);
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

const dayNumber = (time: number): number => Math.floor(Math.round(time / 60) / (24 * 60)) + 1;

/** Day and hour: "day 2, 22:00". Time from midnight before the first day [s]. */
export const clockWords = (time: number): Sentence =>
  sentence`day ${amount(dayNumber(time), 'count')}, ${hourWords(time)}`;
