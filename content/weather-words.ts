import type { Climate } from '../calculators/climate/record.ts';
import { fromBase } from '../calculators/quantities/quantity.ts';
import type { WeatherAccount } from './weather-file.ts';

/** What was read of a weather file and what it says of the place, a line each, for whoever runs the command. */

const counted = (count: number, thing: string): string =>
  `${count.toLocaleString('en')} ${thing}${count === 1 ? '' : 's'}`;

const orders = {
  'year-first': 'year first',
  'day-first': 'day before month',
  'month-first': 'month before day',
} as const;

const unitReasons = {
  choice: 'as you said',
  file: 'as the file says',
  values: 'as the values leave no other: --unit says otherwise',
} as const;

/** How the file was understood, and what of it was not used and why. */
export function weatherWords(account: WeatherAccount): readonly string[] {
  const { kind, lines, every, columns, unit, unitBy, order, leftOut, longestGap } = account;
  const minutes = Math.round(every / 60);
  const rhythm = minutes % 60 === 0 ? counted(minutes / 60, 'hour') : counted(minutes, 'minute');
  return [
    kind === 'hours'
      ? `${counted(lines, 'line')}, one every ${rhythm}, parted by a ${account.delimiter}; days with ${orders[order.order]}.`
      : `${counted(lines, 'line')}, one a day, parted by a ${account.delimiter}; days with ${orders[order.order]}.`,
    `Temperatures from ${columns.map((name) => `"${name}"`).join(' and ')} in ${unit}, ${unitReasons[unitBy]}.`,
    ...(account.empty > 0 ? [`${counted(account.empty, 'line')} without a reading.`] : []),
    ...(account.duplicates > 0
      ? [`${counted(account.duplicates, 'line')} with a time that an earlier line has: the first was kept.`]
      : []),
    ...(account.clockBack > 0
      ? [
          `${counted(account.clockBack, 'line')} of an hour that a clock put back went through again: the first was kept.`,
        ]
      : []),
    ...(account.clockForward > 0
      ? [`${counted(account.clockForward, 'hour')} jumped over where a clock was put forward: bridged.`]
      : []),
    ...(account.filled > 0 ? [`${counted(account.filled, 'hour')} bridged in short gaps.`] : []),
    ...(account.partDays > 0
      ? [`${counted(account.partDays, 'day')} with too few hours for a lowest and a highest: not counted.`]
      : []),
    ...(longestGap
      ? [
          `The longest gap: ${counted(longestGap.hours, 'hour')} from ${longestGap.day}; nothing was filled in.`,
        ]
      : []),
    ...leftOut.map(({ text }) => `Left out: ${text}`),
  ];
}

const degrees = (value: number): string =>
  `${value.toFixed(1).replace('-', '−')} °C (${fromBase('temperature', value, '°F').toFixed(1).replace('-', '−')} °F)`;

/** Days of a year for the number of years that a record spans. */
const daysOfYear = 365.2425;

/** What the record says of the place. */
export function climateWords(climate: Climate): readonly string[] {
  const span = (Date.parse(climate.lastDay) - Date.parse(climate.firstDay)) / 86_400_000 + 1;
  const years = Math.floor(span / 365);
  const { coldestSnap, months } = climate;
  const means = months.map(({ meanLow, meanHigh }) =>
    ((meanLow + meanHigh) / 2).toFixed(1).replace('-', '−'),
  );
  return [
    `${climate.firstDay} to ${climate.lastDay}: ${(span / daysOfYear).toFixed(1)} years, ${counted(climate.daysMissing, 'day')} missing, ${counted(climate.winters, 'whole winter')}.`,
    climate.hoursUsed === undefined
      ? `Design temperatures, estimated from daily lows and highs of ${counted(years, 'year')}:`
      : `Design temperatures, from ${counted(climate.hoursUsed, 'hour')} of ${counted(years, 'year')}:`,
    `  exceeded in 99.6 % of all hours  ${degrees(climate.exceeded996)}`,
    `  exceeded in 99 % of all hours    ${degrees(climate.exceeded99)}`,
    `Mean of each winter’s lowest       ${degrees(climate.usualLowest)}`,
    `Lowest on the record               ${degrees(climate.recordLowest)}`,
    `Ground in the coldest weeks        ${degrees(climate.ground)}`,
    `The coldest three days began on ${coldestSnap.begins}: mean ${degrees(coldestSnap.mean)}, lowest ${degrees(coldestSnap.lowest)}.`,
    `Degree hours of a year: ${climate.degreeHours
      .map(
        ({ below, sum }) =>
          `${Math.round(fromBase('degreeHours', sum, 'K·h')).toLocaleString('en')} K·h below ${below} °C`,
      )
      .join(', ')}.`,
    `Months, January to December, mean: ${means.join(', ')} °C.`,
    ...(climate.winters < 10 ? ['Fewer than ten winters may hold no hard one: thirty years are good.'] : []),
  ];
}
