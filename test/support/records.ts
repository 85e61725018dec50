import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import type { Day } from '../../calculators/climate/record.ts';
import { root } from './imports.ts';

/** Real weather. Days and normals are records of the National Oceanic and Atmospheric Administration in the open package vega-datasets. */

const rowsOf = (file: string): string[][] =>
  readFileSync(join(root, 'node_modules', 'vega-datasets', 'data', file), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.split(','));

/** Daily lows and highs of a city, 2012 to 2015 [°C]. */
export const dailyRecord = (place: 'Seattle' | 'New York'): Day[] =>
  rowsOf('weather.csv')
    .filter(([location]) => location === place)
    .map(([, date = '', , high, low]) => ({ date, low: Number(low), high: Number(high) }));

/** Hourly normals of Seattle, 1981 to 2010, from one o'clock on 1 January to the end of the year [°C]. */
export const hourlyNormals = (): number[] =>
  rowsOf('seattle-weather-hourly-normals.csv').map(([, , t]) => Number(t));

/**
 * 43,824 hours of 2010 to 2014, in whole degrees, read at the airport of Beijing, as a table of year, month, day, hour and
 * TEMP: columns of the data set "Beijing PM2.5" (X. Liang and others, Assessing Beijing’s PM2.5 pollution, 2015; UCI
 * Machine Learning Repository, CC BY 4.0).
 */
export const hoursOfBeijing = (): string =>
  gunzipSync(readFileSync(join(root, 'test/support/hours/beijing-2010-2014.csv.gz'))).toString();
