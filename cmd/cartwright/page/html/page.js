// The page's own script. The program makes the HTML; this sends what is typed, fetches what follows from it, and keeps
// focus and scrolling. The address holds what is shown, so that back and reload work.
(() => {
  'use strict';

  // Who answers: the program that serves the page or, in a page that is one file, the planner within it (window.door).
  // The program keeps what is not saved yet while the page is reloaded; a file does not.
  const door = window.door || {
    keeps: true,
    ask: (path, options) => fetch(path, options),
    listen(tell, gone) {
      const events = new EventSource('events');
      events.onmessage = (m) => tell(JSON.parse(m.data));
      events.onerror = () => {
        if (events.readyState !== EventSource.CLOSED) events.close();
        gone('The program has ended, or too many tabs are open. What was not saved is lost; start it again and open its new address.');
      };
    },
  };
  const typing = 80; // ms without a letter before a field is sent
  const sliding = 100; // ms at least between two values of a slider that are sent
  const $ = (id) => document.getElementById(id);
  let number = Number(document.body.dataset.number); // of the last change that this page shows
  let sending = Promise.resolve(); // one change after the other
  const tab = Math.random().toString(36).slice(2); // which tab this is
  let key = ''; // of the results that are shown
  let fetching = null, again = false, formsWanted = false;
  const waiting = new Map(); // fields that were typed into and not sent yet

  const query = () => new URLSearchParams(location.search);

  function show(change) {
    const q = query();
    for (const [key, value] of Object.entries(change)) q.set(key, value);
    history.pushState(null, '', '?' + q);
    refresh(false);
  }

  // choose puts the purchases that the address holds side by side. A later question replaces an earlier one.
  let chosen = '', chosenOf = number, asking = null;
  async function choose(anew) {
    const buy = query().getAll('buy').filter((b) => b);
    $('buy-1').value = buy[0] || '';
    $('buy-2').value = buy[1] || '';
    if (buy.length) $('choices').open = true;
    if (!anew && buy.join('\n') === chosen) return;
    chosen = buy.join('\n');
    if (asking) asking.abort();
    asking = new AbortController();
    try {
      const answer = await door.ask('compare?' + new URLSearchParams(buy.map((b) => ['buy', b])), { signal: asking.signal });
      if (!answer.ok) throw new Error(await answer.text());
      $('chosen').innerHTML = await answer.text();
    } catch (e) { if (e.name !== 'AbortError') notice('The program did not answer: ' + e.message); }
  }

  // send has a change made. It is made of the number that is shown by then.
  function send(path, body) {
    sending = sending.then(async () => {
      try {
        const answer = await door.ask(path, {
          method: 'POST', headers: { 'Content-Type': 'application/json' },
          body: JSON.stringify({ Tab: tab, Number: number, ...body }),
        });
        if (!answer.ok) throw new Error(await answer.text());
        const told = await answer.json();
        number = told.number;
        if (told.error) { notice(told.error); refresh(true); }
      } catch (e) { notice('The program did not answer: ' + e.message); }
    });
    return sending;
  }

  function notice(words) { if ($('notice').textContent !== words) $('notice').textContent = words; }

  // refresh fetches what is known. Fetches do not overlap; the last one asked for counts.
  function refresh(forms) {
    formsWanted = formsWanted || forms;
    if (fetching) { again = true; return fetching; }
    fetching = (async () => {
      do {
        again = false;
        const q = query();
        const withForms = formsWanted;
        formsWanted = false;
        if (withForms) q.set('forms', '1');
        q.set('have', key);
        try {
          const answer = await door.ask('state?' + q);
          if (!answer.ok) throw new Error(answer.statusText);
          apply(await answer.json(), withForms);
        } catch (e) { notice('The program did not answer: ' + e.message); }
      } while (again);
      fetching = null;
    })();
    return fetching;
  }

  function apply(state, withForms) {
    number = Math.max(number, state.number);
    document.title = state.name + ': cartwright';
    if ($('name').textContent !== state.name) $('name').textContent = state.name;
    if ($('status').textContent !== state.status) $('status').textContent = state.status;
    if (!state.planning) $('far').textContent = '';
    notice(state.notice);
    $('undo').disabled = !state.canUndo;
    $('save').disabled = !state.dirty;
    $('stop').disabled = !state.planning;
    $('progress').hidden = !state.planning;
    if (withForms && waiting.size === 0 && !replace($('forms'), state.forms)) parts($('kind').value);
    if (state.results !== undefined) replace($('results'), state.results);
    key = state.key;
    if (chosen && !state.planning && state.number !== chosenOf) { chosenOf = state.number; choose(true); }
    for (const p of document.querySelectorAll('.price')) {
      const words = (state.prices[p.id.slice(2)] || []).join('; ');
      if (p.textContent !== words) p.textContent = words;
    }
    mistakes(state.mistakes);
    loose(state.loose);
    unkept = !door.keeps && (state.dirty || state.loose.some((name) => !taken.has(name)));
  }

  // loose offers what is saved but kept nowhere else.
  let unkept = false, offered = '';
  const taken = new Set(); // that were downloaded since
  function loose(names) {
    if (names.join('\n') === offered) return;
    offered = names.join('\n');
    const buttons = names.map((name) => {
      const b = document.createElement('button');
      b.type = 'button';
      b.dataset.file = name;
      b.textContent = 'Download ' + name.split('/').pop();
      return b;
    });
    $('loose').hidden = !names.length;
    $('loose').replaceChildren(names.length ? 'Kept in this page only: ' : '', ...buttons.flatMap((b) => [b, ' ']));
  }

  // download hands over what the program answers as a file of that name.
  async function download(path, name) {
    try {
      const answer = await door.ask(path);
      if (!answer.ok) throw new Error(await answer.text());
      const link = document.createElement('a');
      link.href = URL.createObjectURL(await answer.blob());
      link.download = name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 60000);
      return true;
    } catch (e) { notice('The program did not answer: ' + e.message); return false; }
  }

  // replace puts other HTML into a place, if it is other, and keeps focus and selection. It tells whether it did.
  function replace(place, html) {
    if (place.madeOf === html) return false;
    const at = document.activeElement;
    const id = place.contains(at) ? at.id : '';
    const key = place.contains(at) ? (at.getAttribute('aria-label') || '') : '';
    const from = at && at.selectionStart, to = at && at.selectionEnd;
    const kind = place.contains($('kind')) ? $('kind').value : '', find = place.contains($('find')) ? $('find').value : '';
    place.innerHTML = html;
    place.madeOf = html;
    if (kind) { $('kind').value = kind; $('find').value = find; parts(kind); }
    const next = id ? $(id) : key ? [...place.querySelectorAll('[aria-label]')].find((e) => e.getAttribute('aria-label') === key) : null;
    if (next) {
      next.focus({ preventScroll: true });
      if (from !== null && from !== undefined && next.setSelectionRange && next.type === 'text') next.setSelectionRange(from, to);
    }
    return true;
  }

  function mistakes(list) {
    for (const e of document.querySelectorAll('[aria-invalid]')) e.removeAttribute('aria-invalid');
    for (const e of document.querySelectorAll('.error')) if (e.textContent) e.textContent = '';
    const rest = document.createElement('ul');
    for (const m of list) {
      const field = m.path && $('f-' + m.path), place = m.path && $('e-' + m.path);
      if (field) field.setAttribute('aria-invalid', 'true');
      if (place) { place.textContent = m.text; continue; }
      const item = document.createElement('li');
      item.textContent = m.text;
      rest.append(item);
    }
    const words = rest.textContent;
    if ($('mistakes').dataset.words === words) return;
    $('mistakes').dataset.words = words;
    $('mistakes').replaceChildren(...(words ? [rest] : []));
  }

  // typed sends a field once typing rests, or at once where it is left.
  function typed(field, now) {
    clearTimeout(waiting.get(field));
    waiting.delete(field);
    const go = () => {
      waiting.delete(field);
      if (field.dataset.path) send('edit', { Path: field.dataset.path, Value: field.value.trim() });
      else if (field.dataset.row) {
        const file = field.closest('table').dataset.file;
        send('part', { File: file, Row: Number(field.dataset.row), Column: Number(field.dataset.column), Value: field.value.trim() });
      }
    };
    if (now) go(); else waiting.set(field, setTimeout(go, typing));
  }

  // slid sends a slider's value at once, but no more often than a plan follows; the last value is always sent.
  let slidAt = 0;
  function slid(field) {
    clearTimeout(waiting.get(field));
    const wait = Math.max(0, slidAt + sliding - performance.now());
    const go = () => { slidAt = performance.now(); typed(field, true); };
    if (wait > 0) waiting.set(field, setTimeout(go, wait)); else go();
  }

  async function parts(kind) {
    const q = new URLSearchParams({ kind, find: $('find').value });
    const answer = kind ? await door.ask('parts?' + q) : null;
    if ($('parts')) $('parts').innerHTML = answer && answer.ok ? await answer.text() : '';
  }

  document.addEventListener('input', (e) => {
    const field = e.target;
    if (field.type === 'range') {
      const text = $(field.dataset.for);
      text.value = (field.value + ' ' + field.dataset.unit).trim();
      slid(text);
    } else if (field.dataset.path || field.dataset.row) {
      typed(field, false);
      const slider = field.dataset.path && $('s-' + field.dataset.path);
      if (slider) slider.value = parseFloat(field.value);
    }
  });

  document.addEventListener('change', (e) => {
    const field = e.target;
    if (waiting.has(field)) typed(field, true);
    if (field.id === 'kind' || field.id === 'find') parts($('kind').value);
    if (field.name === 'a' || field.name === 'b') show({ [field.name]: field.value });
  });

  document.addEventListener('submit', (e) => {
    e.preventDefault();
    if (e.target.id !== 'choosing') return;
    const q = query();
    q.delete('buy');
    for (const id of ['buy-1', 'buy-2']) if (value(id)) q.append('buy', value(id));
    history.pushState(null, '', '?' + q);
    choose(true);
  });

  const value = (id) => $(id).value.trim();
  const rows = (body) => send('part', { File: $('parts').querySelector('table').dataset.file, ...body }).then(() => parts($('kind').value));
  const whole = (path, body) => send(path, body).then(() => refresh(true)); // what changes more than a field
  document.addEventListener('click', (e) => {
    const b = e.target.closest('button');
    if (!b) return;
    const d = b.dataset;
    if (d.file) download('file?' + new URLSearchParams({ name: d.file }), d.file.split('/').pop()).then((done) => { if (done) { taken.add(d.file); refresh(false); } });
    else if (b.id === 'json') download('plans.json', 'plans.json');
    else if (d.show) show({ show: d.show });
    else if (d.bought) whole('bought', { Show: Number(d.bought) - 1 });
    else if (d.remove) whole('edit', { Path: d.remove, Remove: true });
    else if (d.add === 'loads') whole('edit', { Path: 'loads', Add: [{ Key: 'name', Value: 'new load' }, { Key: 'watts', Value: '100 W' }] });
    else if (d.add === 'have' && value('new-paid')) whole('bought-part', { Part: value('new-part'), Count: value('new-count'), Price: value('new-paid') });
    else if (d.add === 'have') whole('edit', { Path: 'have', Add: [{ Key: 'part', Value: value('new-part') }, { Key: 'count', Value: value('new-count') }] });
    else if (d.removeRow) rows({ Row: Number(d.removeRow), Remove: true });
    else if (b.id === 'add-row' && value('new-id')) rows({ Value: value('new-id'), Add: [] });
    else if (d.sold) {
      const row = b.closest('tr');
      const cell = (name) => [...row.querySelectorAll('input')].find((i) => i.dataset.path.endsWith('.' + name)).value;
      const price = prompt('What is paid for it in all: ' + cell('count') + ' x ' + d.sold + '?', parseFloat(cell('sell')) * parseFloat(cell('count')) || '');
      if (price !== null) whole('sold', { Part: d.sold, Count: cell('count'), Price: price });
    } else if (['undo', 'save', 'reload', 'stop'].includes(b.id)) {
      if (b.id === 'save') taken.clear();
      whole(b.id, {});
    }
  });

  addEventListener('popstate', () => { refresh(false); choose(false); });
  addEventListener('beforeunload', (e) => { if (waiting.size || unkept) e.preventDefault(); });

  door.listen((e) => {
    if (e.kind === 'progress') {
      // Not in the status, which a screen reader reads out whenever it changes.
      $('far').textContent = e.cells + ' choices looked into, ' + e.found + ' plans found';
      return;
    }
    refresh(e.kind === 'changed' && e.tab !== tab && e.number > number);
  }, (words) => {
    document.body.classList.add('gone');
    notice(words);
    for (const b of document.querySelectorAll('button')) b.disabled = true;
  });

  refresh(false);
  choose(false);
})();
