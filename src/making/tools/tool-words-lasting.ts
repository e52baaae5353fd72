import type { ToolWords } from "./tool-need.ts";

/** Lasting, bottoming, heel and finish. */
export const lastingTools = {
  lasts: { use: "The form of the shoe: one pair, left and right.", noStandIn: "Nothing: the pattern fits these lasts and no others.", must: true, buy: "first" },
  "last stand": { use: "To hold the last bottom up while you pull and nail.", standIn: "A strap over last and thigh, held down by your foot; or a rolled towel in a vice.", must: false, buy: "later" },
  "last hook": { use: "To pull the last out of the finished shoe.", standIn: "A strong bent rod or cord through the last's hole.", must: true, buy: "first" },
  "marking strips": { use: "To carry the marks for throat, back and sides to both lasts.", standIn: "Strips of paper cut from the marks sheet.", must: true, buy: "first" },
  "French chalk": { use: "To dust the last so that the lining slides and the last comes out.", standIn: "Talcum powder without scent. Shake it low, and do not breathe it in.", must: true, buy: "first" },
  "lasting pincers": { use: "To pull the upper over the last; their side is a small hammer.", standIn: "Flat pliers with broad jaws, tape on their teeth; slower, and they mark the leather.", must: true, buy: "first" },
  "lasting hammer": { use: "To drive tacks and to flatten lasted pleats.", standIn: "Any hammer of 200 to 300 g; the pincers' side does for tacks.", must: false, buy: "later" },
  "tack lifter": { use: "To draw tacks without tearing the leather.", standIn: "A small screwdriver, its edges rounded, or the nippers.", must: true, buy: "first" },
  nippers: { use: "To draw tacks and to cut nails short.", standIn: "End-cutting pliers from a hardware shop.", must: true, buy: "first" },
  "bowl of water": { use: "To damp what must bend: stiffener, insole, sole leather.", standIn: "Any bowl and a sponge.", must: true, buy: "first" },
  rasp: { use: "To level lasted pleats and shape heel and sole edges.", standIn: "Abrasive paper of 40 or 60 on a slat.", must: true, buy: "first" },
  "wire brush": { use: "To roughen lasting margin and sole so that cement holds.", standIn: "Abrasive paper of 40 or 60.", must: false, buy: "first" },
  "abrasive paper": { use: "To smooth edges, from 80 over 150 to 320, and to roughen for cement.", noStandIn: "Nothing: it costs little.", must: true, buy: "first" },
  glass: { use: "A fresh-cut edge of window glass, taped where you hold it, to scrape sole edges and heel smooth.", standIn: "A cabinet scraper, which is kinder to the hand; or abrasive paper.", must: false, buy: "later" },
  "hair dryer": { use: "To wake up cement that is dry.", standIn: "Nothing hotter. Else press within the open time and use no heat.", must: false, buy: "first" },
  "heel block": { use: "Hard and level, to hammer lifts on and to hold their faces flat.", standIn: "The lapstone or marble tile on a folded cloth.", must: false, buy: "later" },
  "nail set": { use: "To sink the heads of heel nails below the leather.", standIn: "A large nail with its point filed flat.", must: false, buy: "later" },
  "edge iron": { use: "To press sole edges to shape, with wax.", standIn: "The back of a spoon, warmed in hot water.", must: false, buy: "later" },
  "burnishing bone": { use: "To rub damp edges and soles to a shine.", standIn: "The bone folder, or a smooth hardwood stick.", must: false, buy: "later" },
  "rubbing stick": { use: "To rub seams, lasted edges and cemented soles down.", standIn: "The handle of a wooden spoon.", must: false, buy: "later" },
  "polishing cloth": { use: "To clean and polish, one for each colour.", standIn: "An old cotton shirt.", must: true, buy: "first" },
} as const satisfies Readonly<Record<string, ToolWords>>;
