import "@fontsource-variable/atkinson-hyperlegible-next/wght.css";
import "./look/look.css";
import "./look/column.css";
import "./look/picture.css";
import "./look/photo.css";
import "./look/pieces.css";
import "./look/leather.css";
import "./look/making.css";
import "./look/steps.css";
import { createRoot } from "react-dom/client";
import { App } from "./app.tsx";
import { Desk } from "./desk.ts";
import { Lastings } from "./lastings.ts";
import { LeatherShelf } from "./leather-shelf.ts";
import { Plans } from "./plans.ts";
import { Proofs } from "./proofs.ts";
import { Usuals } from "./usuals.ts";
import { Workshop } from "./workshop.ts";
import { Guard } from "./top/guard.tsx";

const usuals = new Usuals();
const shelf = new LeatherShelf();
const workshop = new Workshop();
const desk = new Desk({ get usual() { return usuals.usual; }, take: (name, bytes) => usuals.take(name, bytes), begin: (job) => workshop.begin(job) }, shelf);
workshop.follow(desk);
const proofs = new Proofs(desk.files);
const lastings = new Lastings(desk.files);
desk.hearsFrom((job) => lastings.foretold(job));
const plans = new Plans();
createRoot(document.getElementById("app")!).render(<Guard desk={desk}><App desk={desk} proofs={proofs} lastings={lastings} plans={plans} usuals={usuals} shelf={shelf} workshop={workshop} /></Guard>);
void usuals.open();
void shelf.open();
void workshop.open();
// Another tab may have written meanwhile, or a full disk may have been cleared.
document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && void workshop.open());
void desk.open().finally(keepForOffline);

/** Only once the page has asked for its own files: the copy for work without network takes in the large image library too. */
function keepForOffline(): void {
  if (!import.meta.env.PROD || !("serviceWorker" in navigator)) return;
  navigator.serviceWorker.register("./service-worker.js").catch(() => {
    // Without it the app only lacks its copy for work without network; the line at the top then says so.
  });
}
