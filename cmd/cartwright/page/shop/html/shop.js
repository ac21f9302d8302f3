// The page's door to the planner within it; page.js asks through it what it asks the program where it is served.
(() => {
  'use strict';
  const text = (id) => document.getElementById(id).textContent;
  const worker = new Worker(URL.createObjectURL(new Blob([text('go-script'), text('worker')], { type: 'text/javascript' })));
  const open = new Map(); // what is asked and not answered yet
  let last = 0;
  let gone = '', tellGone = () => {};

  function fail(words) {
    gone = words;
    for (const o of open.values()) o.fail(new Error(words));
    open.clear();
    tellGone(words);
  }
  worker.onerror = (e) => fail('The planner within this page has failed: ' + e.message);
  worker.onmessage = ({ data }) => {
    if (data.failed) return fail(data.failed);
    const o = open.get(data.id);
    if (!o) return;
    if (data.status) o.begin(data.status, data.kind);
    else if (data.end) { open.delete(data.id); o.end(); } else o.more(data.text);
  };
  worker.postMessage({ planner: text('planner'), files: text('files') });

  function send(path, method, body, to) {
    const id = ++last;
    open.set(id, to);
    worker.postMessage({ id, method, path, body });
    return id;
  }

  window.door = {
    keeps: false,
    ask(path, { method = 'GET', body = '', signal } = {}) {
      return new Promise((done, fail) => {
        if (gone) { fail(new Error(gone)); return; }
        let status = 0, kind = '', all = '';
        const id = send(path, method, body, {
          begin: (s, k) => { status = s; kind = k; },
          more: (t) => { all += t; },
          end: () => done(new Response(all, { status, headers: { 'Content-Type': kind } })),
          fail,
        });
        if (!signal) return;
        signal.addEventListener('abort', () => {
          if (!open.delete(id)) return;
          worker.postMessage({ drop: id });
          fail(signal.reason);
        });
      });
    },
    listen(tell, gone) {
      tellGone = gone;
      let rest = '';
      send('events', 'GET', '', {
        begin() {},
        more(t) {
          const events = (rest + t).split('\n\n');
          rest = events.pop();
          for (const e of events) tell(JSON.parse(e.replace(/^data: /, '')));
        },
        end() {},
        fail() {},
      });
    },
  };
})();
