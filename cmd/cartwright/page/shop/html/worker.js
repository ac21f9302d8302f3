// The worker beside the page: it starts the planner, and passes on what is asked of it and what it answers. Go's own
// script, which is started from, stands before this one.
const host = globalThis.host = {
  ready() { postMessage({ ready: true }); },
  failed(words) { postMessage({ failed: words }); },
  begin(id, status, kind) { postMessage({ id, status, kind }); },
  more(id, text) { postMessage({ id, text }); },
  end(id) { postMessage({ id, end: true }); },
};

async function start(planner) {
  const text = atob(planner);
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  const code = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'));
  const go = new Go();
  const made = await WebAssembly.instantiateStreaming(new Response(code, { headers: { 'Content-Type': 'application/wasm' } }), go.importObject);
  await go.run(made.instance);
  host.failed('The planner within this page has ended.');
}

const waiting = []; // what is asked before the planner is there
onmessage = ({ data }) => {
  if (data.planner) {
    host.files = data.files;
    const { ready } = host;
    host.ready = () => { ready(); onmessage = pass; for (const m of waiting) pass(m); };
    start(data.planner).catch((e) => host.failed('The planner within this page cannot be started: ' + e.message));
  } else waiting.push({ data });
};

const pass = ({ data }) => {
  if (data.drop) host.drop(data.drop);
  else host.ask(data.id, data.method, data.path, data.body);
};
