import type { Finding } from "#base/findings.ts";
import type { MoneyField } from "#base/sentences/money.ts";
import { goodIds } from "#making/goods.ts";
import { phases } from "#making/steps/step.ts";
import type { MakingSpot } from "./spot.ts";

const ofGood = { price: "prices", for: "for", size: "skins", shelf: "shelf" } as const;

function moneySpot(field: MoneyField, name: string | undefined): MakingSpot | undefined {
  if (field === "rate" || field === "overhead" || field === "asked") return `making ${field}`;
  const good = goodIds.find((id) => id === name);
  return good && `making ${ofGood[field]} ${good}`;
}

/** The field of making that a finding speaks of, where it is one. */
export function makingSpotOf(f: Finding): MakingSpot | undefined {
  switch (f.code) {
    case "money-number":
    case "money-amount":
      return moneySpot(f.data.field, f.data.good);
    case "money-currency":
      return moneySpot(f.data.field ?? "price", f.data.good);
    case "money-for-missing":
      return moneySpot("for", f.data.good);
    case "money-size-small":
    case "skin-unread":
    case "skin-odd":
      return moneySpot("size", f.data.good);
    case "money-asked-below":
      return "making asked";
    case "money-pairs":
    case "money-pairs-most":
    case "money-pairs-read":
    case "money-pairs-many":
      return "making pairs";
    case "lasts-unread":
      return "making lasts";
    case "cement-unread":
      return "making cement";
    case "minutes-unread": {
      const phase = phases.find((p) => p === f.data.phase);
      return phase && `making minutes ${phase}`;
    }
    case "sessions-unread":
    case "sessions-backward":
    case "sessions-short":
    case "sessions-overlap":
    case "sessions-none":
    case "chain-too-long":
    case "chain-too-slow":
    case "start-alone":
    case "calendar-too-long":
      return "making sessions";
    case "start-unread":
      return "making start";
    default:
      return undefined;
  }
}
