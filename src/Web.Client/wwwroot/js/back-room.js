// A second .NET runtime beside the page's own: long work is done here and never holds up the page.
import { dotnet } from "../_framework/dotnet.js";

const work = dotnet.create()
  .then(runtime => runtime.getAssemblyExports("WitnessMark.Web.Client.dll"))
  .then(all => all.WitnessMark.Web.Client.BackRoom.Work);

self.onmessage = async ({ data: { id, task, text } }) => {
  try {
    self.postMessage({ id, answer: (await work)[task](text) });
  } catch (fault) {
    self.postMessage({ id, fault: String(fault) });
  }
};
