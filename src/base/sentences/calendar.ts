import { clockText } from "../clock.ts";
import { sentence } from "../sentence.ts";

const long = (min: number): string => (min < 120 ? `${min} min` : `${Math.floor(min / 60)} h${min % 60 ? ` ${min % 60} min` : ""}`);
const example = "Write days and times like “Tue 19:00-21:30, Sat 9:00-13:00”.";

export const calendarSentences = {
  "minutes-unread": sentence("look", (d: { phase: string; text: string; ambiguous?: boolean }) =>
    `Your minutes for ${d.phase}: “${d.text}” ${d.ambiguous ? "may be a thousand and more, or one and a bit. Write it like 1500 or 1.5" : "is no time between nothing and 100 hours. Write minutes for one pair, like 90, or hours, like 1.5 h"}; until then the usual time is used.`),
  "minutes-no-phase": sentence("look", (d: { phase: string }) => `Your minutes are given for “${d.phase}”, which is no part of the work here. They are left out.`),
  "sessions-unread": sentence("look", (d: { text: string; word?: string; why: "no day" | "day" | "day behind" | "no time" | "time"; alone?: boolean }) => {
    const wrong = { "no day": "it says no day", day: `“${d.word}” is no day of the week`, "day behind": "its day stands behind its time", "no time": "it says no time from and to", time: `“${d.word}” is no time of day` }[d.why];
    return `When you work: “${d.text}” ${d.alone ? `cannot be read, for ${wrong}; so there is no calendar` : `is left out, for ${wrong}`}. ${example}`;
  }),
  "sessions-backward": sentence("look", (d: { text: string; fromMin: number; toMin: number }) =>
    `When you work: “${d.text}” ${d.toMin === d.fromMin ? `ends when it begins, at ${clockText(d.toMin)}` : `ends at ${clockText(d.toMin)}, before it begins at ${clockText(d.fromMin)}`}, and is left out. Let it end by 24:00 and write what lies after midnight for the next day.`),
  "sessions-short": sentence("look", (d: { text: string; leastMin: number }) => `When you work: “${d.text}” is left out. A session needs ${d.leastMin} min at least, or nothing gets done in it.`),
  "sessions-overlap": sentence("look", (d: { day: string; fromMin: number; toMin: number }) =>
    `When you work: two times on ${d.day} overlap. They are taken as one, ${clockText(d.fromMin)} to ${clockText(d.toMin)}.`),
  "sessions-none": sentence("look", () => `When you work: no time could be read, so there is no calendar. ${example}`),
  "start-unread": sentence("look", (d: { text: string }) =>
    `First day of work: “${d.text}” cannot be read${/^\s*\d{4}-\d{1,2}-\d{1,2}\s*$/.test(d.text) ? ", for there is no such day" : ""}, so the calendar counts weeks. Write year, month and day, like 2026-12-02.`),
  "start-alone": sentence("note", () => `A first day of work is said, but not when you work; so there is no calendar. ${example}`),
  "lasts-unread": sentence("look", (d: { text: string }) =>
    `How many pairs of lasts you have: “${d.text}” is no whole number from 1 on, and one pair is reckoned with. Write a number like 2.`),
  "chain-too-long": sentence("look", (d: { steps: readonly string[]; needMin: number; longestMin: number }) =>
    `There is no calendar: ${d.steps.map((title) => `“${title}”`).join(", ")} must be done in one go: what is coated or wetted there does not wait for another day. That takes ${long(d.needMin)} with its drying; your longest session is ${long(d.longestMin)}. Make one session that long.`),
  "chain-too-slow": sentence("look", (d: { steps: readonly string[] }) =>
    `There is no calendar: ${d.steps.map((title) => `“${title}”`).join(", ")} cannot be done before the first of them has dried too far; at the minutes that stand here, what lies between takes longer, or the second shoe comes too late. Look at your minutes for this part of the work. If you do need that long, coat or stick the second shoe only when the first is done, and leave these minutes empty: the calendar then plans with the usual ones.`),
  "calendar-too-long": sentence("look", (d: { hours: number; pairs: number; rounds: number; sessions: number; weeks: number }) =>
    `There is no calendar: ${d.pairs === 1 ? "the pair takes" : `${d.pairs} pairs take`} about ${d.hours} hours at the bench, ${d.rounds === 1 ? "and that fills" : `in ${d.rounds} rounds on your lasts, and with all that dries on them that takes`} more than ${d.sessions} of your sessions (${d.weeks} weeks or more of them). Make fewer pairs at a time, ${d.rounds === 1 ? "" : "take more lasts, "}or work in more or longer sessions.`),
};
