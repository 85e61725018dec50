interface Progress {
  /** How many fields the reader has set, and how many there are. */
  readonly set: number;
  readonly of: number;
  /** Where the other fields have their values from. */
  readonly origin: 'example' | 'file';
  /** How many answers cannot be used as they stand. */
  readonly wrong: number;
  /** Whether the browser keeps the bench. */
  readonly keeps: boolean;
}

/** How far a reader has come with their bench. */
export function progressWords({ set, of, origin, wrong, keeps }: Progress): string {
  const rest = origin === 'example' ? 'The others are the example’s' : 'The others have their usual values';
  return [
    `You have set ${set} of ${of} fields.`,
    ...(set < of ? [`${rest}, and are marked.`] : []),
    ...(wrong > 0 ? [`${wrong === 1 ? 'One answer' : `${wrong} answers`} cannot be used yet.`] : []),
    ...(keeps
      ? []
      : ['This browser does not let the guide keep your bench: save it as a file before you go.']),
  ].join(' ');
}
