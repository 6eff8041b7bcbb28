'use strict';
/*
 * Says which looks this device holds that the service has not: to who is signed in, their own, with the way to them; to
 * who is not, how many of whom. Copies are made by look.js, one for each person and animal (or look that is corrected).
 *
 * A copy is removed when the service has the look, and after thirty days, but not before its person was told.
 */
(() => {
  const place = document.getElementById('unsent');
  if (!place) return;
  const DAY_MS = 24 * 60 * 60 * 1000;
  const OLD_DAYS = 30;

  const words = {};
  for (const word of place.querySelector('template').content.querySelectorAll('[data-word]')) {
    words[word.dataset.word] = word.textContent;
  }
  const say = (key, ...given) => given.reduce((text, value, i) => text.replace('{' + i + '}', value), words[key]);
  const line = (tag, content) => {
    const made = document.createElement(tag);
    made.append(content);
    return made;
  };

  const read = shelf => {
    try {
      return JSON.parse(localStorage.getItem(shelf)) || {};
    } catch {
      return {};
    }
  };
  const copies = [];
  try {
    for (const shelf of Object.keys(localStorage)) {
      const of = /^varanid\.look\.([0-9a-f-]{36})\.([0-9a-f-]{36})(?:\.([0-9a-f-]{36}))?$/.exec(shelf);
      if (!of) continue;
      const [, person, animal, corrected] = of;
      const path = '/animals/' + animal + (corrected ? '/looks/' + corrected + '/correction' : '/look');
      copies.push({shelf, person, path, copy: read(shelf)});
    }
  } catch {
    return; // a browser that keeps nothing
  }

  const day = copy => copy.began
      ? new Date(copy.began).toLocaleDateString([], {weekday: 'long', day: 'numeric', month: 'long'}) : '';
  const told = [];

  const tellOwn = () => {
    for (const {shelf, path, copy} of copies.filter(each => each.person === place.dataset.person)) {
      const old = Date.now() - Date.parse(copy.began) > OLD_DAYS * DAY_MS;
      if (copy.key && copy.key === place.dataset.formKey) {
        localStorage.removeItem(shelf);
      } else if (old && Date.now() - copy.told > DAY_MS) {
        localStorage.removeItem(shelf);
      } else if ((copy.pending || old) && path !== location.pathname) {
        const link = line('a', say(copy.pending ? 'open' : 'open-begun'));
        link.href = path;
        const said = line('p', say(copy.pending ? 'own' : 'begun', day(copy)) + (old ? ' ' + say('old') : '') + ' ');
        said.append(link);
        told.push(said);
        if (old && !copy.told) localStorage.setItem(shelf, JSON.stringify({...copy, told: Date.now()}));
      }
    }
  };

  const tellOthers = () => {
    const whose = new Map();
    for (const {person, copy} of copies.filter(each => each.copy.pending)) {
      const of = whose.get(person) || {name: copy.name || '', count: 0};
      of.count++;
      whose.set(person, of);
    }
    for (const {name, count} of whose.values()) {
      told.push(line('p', count === 1 ? say('others-one', name) : say('others-many', name, count)));
    }
    if (told.length) told.push(line('p', say('others-why')));
  };

  try {
    if (place.dataset.person) tellOwn();
    else if (/^\/sign-in(\/|$)/.test(location.pathname)) tellOthers();
  } catch { /* a full disk: told again next time */ }
  if (told.length) {
    place.append(line('p', line('b', say('title'))), ...told);
    place.hidden = false;
  }
})();
