/** 95 as "1 h 35 min", 40 as "40 min", to the whole minute; `gap` stands between a number and its unit. */
export function minutesWords(minutes: number, gap = " "): string {
  const whole = Math.round(minutes), h = Math.floor(whole / 60), min = whole % 60;
  return [...(h > 0 ? [`${h}${gap}h`] : []), ...(min > 0 || h === 0 ? [`${min}${gap}min`] : [])].join(" ");
}
