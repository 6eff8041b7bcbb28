'use strict';
/*
 * Makes the form of the look easier: one question at a time, the result while it is made, and answers that survive a lost
 * connection. Without it the form works as it is.
 *
 * What is answered lives in the form's own fields and nowhere else. A copy of them is kept in this browser, for this
 * person and animal, until the service has said that it has the look.
 */
(() => {
  const root = document.getElementById('look');
  const form = root && root.querySelector('form');
  if (!form) return;

  const words = {};
  for (const word of document.getElementById('words').content.querySelectorAll('[data-word]')) {
    words[word.dataset.word] = word.textContent;
  }
  const say = (key, ...given) => given.reduce((text, value, i) => text.replace('{' + i + '}', value), words[key] || key);

  const make = (tag, attributes, ...content) => {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    element.append(...content);
    return element;
  };
  const button = (text, plain, act) => {
    const made = make('button', {type: 'button', class: plain ? 'plain' : ''}, text);
    made.addEventListener('click', act);
    return made;
  };
  const show = (element, shown) => element.classList.toggle('hidden', !shown);

  const animal = root.dataset.animal;
  const shelf = 'varanid.look.' + root.dataset.person + '.' + animal
      + (root.dataset.corrects ? '.' + root.dataset.corrects : '');
  const clockAhead = Date.now() - Date.parse(root.dataset.now);
  const now = () => new Date(Date.now() - clockAhead);

  // ---------------------------------------------------------------------------------------------- what is kept here

  /** A browser may keep nothing (private window, full disk): then the look lives as long as the page. */
  const kept = {
    read() {
      try {
        return JSON.parse(localStorage.getItem(shelf)) || {};
      } catch {
        return {};
      }
    },
    write(what) {
      try {
        localStorage.setItem(shelf, JSON.stringify(what));
      } catch { /* see above */ }
    },
    remove() {
      try {
        localStorage.removeItem(shelf);
      } catch { /* see above */ }
    },
  };
  const viewShelf = 'varanid.look.view';
  const readView = () => {
    try {
      return localStorage.getItem(viewShelf) === 'whole' ? 'whole' : 'steps';
    } catch {
      return 'steps';
    }
  };
  const writeView = view => {
    try {
      localStorage.setItem(viewShelf, view);
    } catch { /* see above */ }
  };

  let draft = kept.read();
  const ours = name => !['_csrf', 'key', 'checklist', 'version'].includes(name);
  const fields = () => [...new FormData(form)].filter(([name, value]) => ours(name) && value !== '');

  const keep = () => {
    delete draft.told;
    draft = {...draft, name: root.dataset.name, key: form.elements.key.value, began: draft.began || now().toISOString(), fields: fields()};
    kept.write(draft);
  };

  const restore = () => {
    form.elements.key.value = draft.key;
    for (const element of form.elements) {
      if (!ours(element.name) || element.type === 'submit' || element.type === 'button') continue;
      const values = draft.fields.filter(([name]) => name === element.name).map(([, value]) => value);
      if (element.type === 'checkbox' || element.type === 'radio') {
        element.checked = values.includes(element.value);
      } else if (values.length) {
        element.value = values[0];
      }
    }
  };

  // ---------------------------------------------------------------------------------------------- the look as JSON

  const numeral = /^[+-]?\d{1,9}([.,]\d{1,9})?$/;
  const number = text => numeral.test(text.trim()) ? Number(text.trim().replace(',', '.')) : text;
  const questions = [...form.querySelectorAll('.question')];
  const idOf = question => question.dataset.finding;
  const field = (name, id) => form.elements.namedItem(name + '.' + id);
  const typed = (name, id) => {
    const element = field(name, id);
    return element ? element.value.trim() : '';
  };

  const answerOf = question => {
    const id = idOf(question);
    const first = typed('number', id);
    const second = typed('second', id);
    if (first || second) {
      if (!field('second', id)) return number(first);
      const both = {};
      if (first) both.value = number(first);
      if (second) both.overDays = number(second);
      return both;
    }
    const chosen = question.querySelector('input[type=radio]:checked');
    return chosen ? chosen.value : null;
  };

  const answers = () => {
    const all = {};
    for (const question of questions) {
      const answer = answerOf(question);
      if (answer !== null) all[idOf(question)] = answer;
    }
    return all;
  };

  const look = () => ({
    checklist: form.elements.checklist.value,
    version: Number(form.elements.version.value),
    conditions: [...form.querySelectorAll('[name=condition]:checked')].map(box => box.value),
    answers: answers(),
  });

  const wholeLook = () => {
    const whole = look();
    const skin = form.elements.skin.value.trim();
    if (skin) {
      whole.skinTemperature = {value: number(skin), unit: form.elements['skin-unit'].value};
      if (form.elements['skin-confirmed'] && form.elements['skin-confirmed'].checked) {
        whole.skinTemperature.confirmed = true;
      }
    }
    if (form.elements.note.value.trim()) whole.note = form.elements.note.value;
    whole.occurredAt = now().toISOString();
    whole.formKey = draft.key;
    if (root.dataset.corrects) {
      // It is the same look, whenever it is corrected.
      whole.occurredAt = root.dataset.occurredAt;
      whole.supersedes = root.dataset.corrects;
      whole.reason = form.elements.reason.value;
    }
    return whole;
  };

  const send = (path, body, signal) => {
    const headers = {
      'Content-Type': 'application/json',
      'X-CSRF-TOKEN': document.querySelector('meta[name="csrf"]').content,
    };
    return fetch(path, {method: 'POST', headers, body, signal});
  };

  // ---------------------------------------------------------------------------------------------- the result so far

  const outcomes = Object.keys(words).filter(key => key.startsWith('outcome.')).map(key => key.slice(8));
  const label = outcome => say('outcome.' + outcome);
  const soFar = make('p', {class: 'so-far'});
  const open = make('p', {class: 'open'});
  const apart = make('p', {class: 'apart'});
  const old = make('p', {class: 'old'});
  const enough = make('p', {class: 'enough'});
  const finish = button(say('finish'), false, () => form.requestSubmit());
  const told = make('div', {role: 'status'}, soFar, open, ' ', apart, ' ', old, ' ', enough);
  const bar = make('section', {class: 'result', 'aria-label': say('result')}, told, finish);

  let score = null;
  let asking = false;
  let askAgain = false;
  let scored = '';

  const isEnough = () => score !== null && (score.urgency.settled || score.next.length === 0
      || score.urgency.lowest === outcomes[outcomes.length - 1]);

  const tell = state => {
    bar.className = 'result ' + state;
    // What is known for the answers of now is not old, even where the service is away.
    if (state === 'failed' && score && scored === JSON.stringify(look())) state = 'told';
    old.textContent = state === 'faulty' ? say('result.faulty')
        : state === 'failed' ? say(score ? 'result.old' : 'result.none')
        : state === 'waiting' ? say('result.waiting') : '';
    if (score) {
      const {recommended, lowest, highest, settled} = score.urgency;
      bar.classList.add(recommended);
      soFar.textContent = settled ? say('result.settled', label(recommended))
          : lowest === highest ? say('result.fixed', label(recommended))
          : highest === recommended ? say('result.at-most', label(recommended))
          : say('result.open', label(recommended), label(highest));
      const unseen = score.unknowns.filter(each => each.mustSee && each.why !== 'implied').length;
      open.textContent = unseen === 0 ? ''
          : unseen === 1 ? say('result.must-see.one') : say('result.must-see.many', unseen);
      apart.textContent = !score.isolation ? ''
          : score.isolation.recommended === 'strict' ? say('result.strict')
          : score.isolation.highest === 'strict' ? say('result.standard') : say('result.standard-settled');
    }
    const done = state === 'told' && isEnough();
    enough.textContent = done ? say('result.enough') : '';
    show(finish, done);
    for (const line of [soFar, open, apart, old, enough]) show(line, line.textContent !== '');
  };

  /** What is shown counts for what is answered now, or says that it does not. One question to the service at a time. */
  const ask = async () => {
    tell('waiting');
    if (asking) {
      askAgain = true;
      return;
    }
    asking = true;
    let state = 'told';
    do {
      askAgain = false;
      try {
        const asked = look();
        const body = {...asked, lifeStage: root.dataset.lifeStage, origin: root.dataset.origin};
        const reply = await send('/api/v1/scores', JSON.stringify(body));
        if (reply.ok) {
          score = await reply.json();
          scored = JSON.stringify(asked);
        }
        state = reply.ok ? 'told' : reply.status === 422 ? 'faulty' : 'failed';
      } catch {
        state = 'failed';
      }
    } while (askAgain);
    asking = false;
    tell(state);
  };

  // ---------------------------------------------------------------------------------------------- one at a time

  const steps = [...form.querySelectorAll('.step')];
  const groups = steps.filter(step => step.classList.contains('group'));
  const end = form.querySelector('.step.end');
  const place = make('p', {class: 'hint place'});
  const back = button(say('back'), true, () => goBack());
  const next = button(say('next'), true, () => goOn());
  const move = make('div', {class: 'move'}, back, next, place);
  let view = root.dataset.corrects ? 'whole' : readView();
  let way = [steps[0]];

  const here = () => way[way.length - 1];

  /** Conditions, what must be seen, and then the section in which one look can change most. */
  const following = () => {
    const left = steps.filter(step => !way.includes(step));
    const first = left.find(step => !step.classList.contains('group') && step !== end);
    if (first) return first;
    for (const wanted of score ? score.next : []) {
      const step = groups.find(group => left.includes(group)
          && group.querySelector('[data-finding="' + CSS.escape(wanted.finding) + '"]'));
      if (step) return step;
    }
    return left.find(step => step.classList.contains('group')) || end;
  };

  const render = focus => {
    const one = view === 'steps';
    root.classList.toggle('steps', one);
    root.classList.toggle('under-way', one && way.length > 1);
    for (const step of steps) show(step, !one || step === here());
    show(move, one);
    show(back, way.length > 1);
    show(next, here() !== end);
    show(viewHint, one);
    place.textContent = say('step', way.length, steps.length);
    for (const [name, toggle] of Object.entries(toggles)) toggle.setAttribute('aria-pressed', String(name === view));
    if (one && here().nextElementSibling !== move) here().append(move);
    if (one && focus) {
      window.scrollTo(0, 0);
      const target = here().querySelector('.question, h2');
      (here().classList.contains('group') ? here().querySelector('h2') : target).focus({preventScroll: true});
      here().scrollIntoView();
    }
    watch();
  };

  const goOn = () => {
    if (here() !== end) way.push(following());
    rememberWay();
    render(true);
  };
  const goBack = () => {
    if (way.length > 1) way.pop();
    rememberWay();
    render(true);
  };
  const rememberWay = () => {
    draft.way = way.map(step => step.dataset.step);
    keep();
  };

  const toggles = {};
  for (const name of ['steps', 'whole']) {
    toggles[name] = button(say('view.' + name), true, () => {
      view = name;
      writeView(view);
      render(false);
    });
  }
  const viewHint = make('p', {class: 'hint'}, say('view.hint'));
  root.insertBefore(make('div', {class: 'view'}, toggles.steps, toggles.whole), form);
  root.insertBefore(viewHint, form);

  // A finger or a mouse answers and goes on; the arrow keys only choose, or nobody could read the choices with them.
  let pointed = false;
  form.addEventListener('pointerdown', () => { pointed = true; });
  form.addEventListener('keydown', event => {
    pointed = false;
    if (event.key === 'Enter' && event.target.matches('input')) {
      // Sent is only what somebody finished.
      event.preventDefault();
      if (view === 'steps' && !here().classList.contains('group')) goOn();
    }
  });

  // ---------------------------------------------------------------------------------------------- none of these

  const seen = new Set();
  const watcher = new IntersectionObserver(entries => {
    for (const entry of entries) {
      if (entry.isIntersecting) seen.add(entry.target);
    }
  }, {threshold: 0.5});
  const legends = questions.map(question => question.querySelector('legend'));
  const watch = () => {
    // Looked at anew, because what was hidden and is shown now is not told by itself.
    for (const legend of legends) {
      watcher.unobserve(legend);
      if (!seen.has(legend)) watcher.observe(legend);
    }
  };

  /** Answers what was left open, and is an answer; nothing that was not on the screen. */
  const answerNone = group => {
    const left = [...group.querySelectorAll('.question')]
        .filter(question => question.dataset.absent && answerOf(question) === null);
    const unread = left.find(question => !seen.has(question.querySelector('legend')));
    if (unread) {
      unread.classList.add('look-again-first');
      unread.scrollIntoView({block: 'center'});
      unread.focus({preventScroll: true});
      return false;
    }
    for (const question of left) {
      const absent = [...question.querySelectorAll('input[type=radio]')]
          .find(radio => radio.value === question.dataset.absent);
      absent.checked = true;
    }
    return true;
  };

  for (const group of groups) {
    const none = group.querySelector('.none');
    if (!none) continue;
    const box = none.querySelector('input');
    const hint = none.querySelector('.hint');
    const note = make('p', {class: 'hint', role: 'status'});
    const tap = button(say('signs-none'), false, () => {
      if (answerNone(group)) {
        note.textContent = '';
        changed();
        if (view === 'steps') goOn();
      } else {
        note.textContent = say('first-look-at');
      }
    });
    tap.setAttribute('aria-describedby', hint.id);
    box.closest('label').replaceWith(tap);
    none.append(note);
  }
  const noConditions = button(say('conditions.none'), false, () => {
    changed();
    if (view === 'steps') goOn();
  });
  steps[0].append(make('p', {}, noConditions));

  // Who sees at once that it is an emergency need not go through what comes before it.
  const emergency = make('details', {class: 'emergency'}, make('summary', {}, say('emergency')),
      make('p', {}, say('emergency.why')));
  for (const radio of form.querySelectorAll('[data-emergency]')) {
    const question = radio.closest('.question').querySelector('legend').textContent.trim();
    const tap = button('', true, () => {
      radio.checked = true;
      emergency.open = false;
      changed();
      emergency.querySelector('summary').focus({preventScroll: true});
    });
    tap.append(make('span', {class: 'hint'}, question), make('b', {}, radio.closest('.choice').textContent.trim()));
    emergency.append(tap);
  }
  steps[0].prepend(emergency);
  const renderConditions = () => show(noConditions, form.querySelector('[name=condition]:checked') === null);

  // What takes time is dated by one tap, at the end.
  const later = questions.filter(question => question.querySelector('.later'));
  const notYet = button(say('not-yet-all'), true, () => {
    for (const question of later) {
      if (answerOf(question) === null) question.querySelector('.later input').checked = true;
    }
    changed();
    renderEnd();
  });
  const stillOpen = make('ul', {});
  const openPart = make('div', {class: 'still-open'}, make('p', {}, say('open-end')), stillOpen, make('p', {}, notYet));
  end.querySelector('h2').after(openPart);
  const renderEnd = () => {
    const left = questions.filter(question => answerOf(question) === null);
    stillOpen.replaceChildren(...left.map(question => {
      const link = make('a', {href: '#' + question.id}, question.querySelector('legend').textContent.trim());
      link.addEventListener('click', event => {
        if (view !== 'steps') return;
        event.preventDefault();
        way.push(question.closest('.step'));
        render(false);
        question.scrollIntoView();
        question.focus({preventScroll: true});
      });
      return make('li', {}, link);
    }));
    show(openPart, left.length > 0);
    show(notYet, later.some(question => answerOf(question) === null));
  };

  // ---------------------------------------------------------------------------------------------- what was changed

  const changed = () => {
    keep();
    renderConditions();
    renderEnd();
    ask();
  };

  form.addEventListener('change', event => {
    const target = event.target;
    const question = target.closest('.question');
    if (question) question.classList.remove('look-again-first');
    if (question && target.type === 'radio') {
      // Else the number would still count.
      for (const input of question.querySelectorAll('.numbers input')) input.value = '';
    }
    if (question && target.matches('.numbers input') && target.value.trim()) {
      for (const radio of question.querySelectorAll('input[type=radio]')) radio.checked = false;
    }
    changed();
    if (pointed && target.type === 'radio' && view === 'steps' && !here().classList.contains('group')) goOn();
  });
  form.addEventListener('input', event => {
    if (event.target.matches('textarea, input:not([type=radio], [type=checkbox])')) keep();
  });

  // ---------------------------------------------------------------------------------------------- sending it

  const why = make('p', {}, say('unsent.why'));
  const retry = button(say('unsent.retry'), false, () => deliver());
  const signIn = make('a', {class: 'button', href: '/sign-in?next=' + encodeURIComponent(location.pathname)},
      say('unsent.sign-in'));
  const unsent = make('section', {class: 'unsent hidden', role: 'status'},
      make('h2', {}, say('unsent')), why, retry, ' ', signIn);
  root.insertBefore(unsent, form);

  let delivering = false;
  let again = 0;

  /** Sends what was finished, with the same key each time: however often it arrives, it is kept once. */
  const deliver = async () => {
    if (delivering || !draft.pending) return;
    delivering = true;
    try {
      const patience = new AbortController();
      setTimeout(() => patience.abort(), 20_000);
      const reply = await send(
          '/api/v1/animals/' + animal + '/assessments', draft.pending, patience.signal);
      if (reply.status === 201) {
        const made = await reply.json();
        kept.remove();
        location.assign('/animals/' + animal + '/looks/' + made.id);
        return;
      }
      if (reply.status === 401 || reply.status === 403) {
        waitFor(say('unsent.signed-out'), true);
      } else if (reply.status === 422 && draft.key !== freshKey && (await reply.json()).type.endsWith('key-reused')) {
        // Another look of this animal went under that key, from another window.
        draft.key = freshKey;
        draft.pending = JSON.stringify({...JSON.parse(draft.pending), formKey: freshKey});
        kept.write(draft);
        waitFor(say('unsent.why'), false);
      } else if (reply.status < 500 && reply.status !== 429) {
        // The service says what is wrong, beside each field, when the form itself is sent.
        delete draft.pending;
        kept.write(draft);
        form.submit();
      } else {
        waitFor(say('unsent.why'), false);
      }
    } catch {
      waitFor(say('unsent.why'), false);
    } finally {
      delivering = false;
    }
  };

  /** While it is on its way nothing in it can be changed, or two looks would have one key. */
  const waitFor = (text, signedOut) => {
    why.textContent = text;
    show(signIn, signedOut);
    show(retry, !signedOut);
    show(unsent, true);
    show(form, false);
    tell('failed');
    show(finish, false);
    show(enough, false);
    unsent.scrollIntoView();
    clearTimeout(again);
    if (!signedOut) again = setTimeout(deliver, 15_000);
  };

  form.addEventListener('submit', event => {
    event.preventDefault();
    if (draft.pending) return;
    keep();
    const reason = form.elements.reason;
    if (reason && !reason.value.trim()) {
      view = 'whole';
      render(false);
      if (!reason.hasAttribute('aria-invalid')) {
        reason.setAttribute('aria-invalid', 'true');
        reason.before(make('span', {class: 'fault', role: 'alert'}, reason.dataset.missing));
      }
      reason.scrollIntoView({block: 'center'});
      reason.focus({preventScroll: true});
      return;
    }
    draft.pending = JSON.stringify(wholeLook());
    kept.write(draft);
    deliver();
  });
  // Sent, or thrown away, in another window.
  window.addEventListener('storage', event => {
    if (event.key === shelf && event.newValue === null) location.reload();
  });
  window.addEventListener('online', () => draft.pending ? deliver() : ask());

  // ---------------------------------------------------------------------------------------------- begin

  const faulty = root.querySelector('.faults');
  const freshKey = form.elements.key.value;
  if (draft.fields && !faulty) {
    restore();
    way = (draft.way || []).map(name => steps.find(step => step.dataset.step === name)).filter(Boolean);
    if (way.length === 0) way = [steps[0]];
    if (!draft.pending) {
      const since = new Date(draft.began).toLocaleString([], {weekday: 'long', hour: '2-digit', minute: '2-digit'});
      const notice = make('div', {class: 'draft'}, make('p', {}, say('draft', since)),
          button(say('draft.discard'), true, () => {
            kept.remove();
            location.reload();
          }));
      root.insertBefore(notice, form);
    }
  } else {
    draft = faulty && draft.key === form.elements.key.value ? draft : {};
    if (faulty) {
      view = 'whole';
      keep();
    } else {
      // A browser that goes back fills fields in by itself; nothing is answered beforehand.
      form.reset();
    }
  }
  window.addEventListener('pageshow', event => {
    if (event.persisted) location.reload();
  });
  root.append(bar);
  root.classList.add('ready');
  renderConditions();
  renderEnd();
  render(false);
  if (draft.pending) {
    waitFor(say('unsent.why'), false);
    deliver();
  } else {
    ask();
  }
})();
