// A second .NET runtime beside the page's own: long work is done here and never holds up the page.
import { dotnet } from "../_framework/dotnet.js";

const work = dotnet.create()
  .then(runtime => runtime.getAssemblyExports("WitnessMark.Web.Client.dll"))
  .then(all => all.WitnessMark.Web.Client.BackRoom.Work);

let at = 0;

// Called by the work itself while it runs.
globalThis.tellShare = share => self.postMessage({ id: at, share });

self.onmessage = async ({ data: { id, task, text, bytes } }) => {
  try {
    const room = await work;
    at = id;
    self.postMessage({ id, answer: bytes ? room[task](text, bytes) : room[task](text) });
  } catch (fault) {
    self.postMessage({ id, fault: String(fault) });
  }
};
