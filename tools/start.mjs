// `npm start`: sets up, builds the app when its sources changed, serves it and says where. Ctrl-C ends.
import { giveUp, inRoot } from "./steps.mjs";
import { setUp } from "./setup.mjs";

setUp();
const { build, isStale } = await import("./build.mjs");
const { serve } = await import("./serve.mjs");

if (isStale("app") && (await build("app")) !== 0) giveUp("The app could not be built; the lines above say why.");

const port = Number(process.env.PORT ?? 4173);
if (!Number.isInteger(port) || port < 0 || port > 65535) giveUp(`PORT must be a whole number from 0 to 65535, not "${process.env.PORT}".`);
const { server, address } = await serve(inRoot("dist/app"), port);
console.log(`Lastwise is at ${address}  (Ctrl-C ends it)`);
for (const signal of ["SIGINT", "SIGTERM"]) {
  process.once(signal, () => {
    server.closeAllConnections();
    server.close(() => process.exit(0));
  });
}
