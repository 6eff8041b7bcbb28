'use strict';
/*
 * j and k move through the animals of a list. Only while something of the list has the focus, so that nobody who dictates
 * or types elsewhere on the page sets them off (WCAG 2.2, 2.1.4). Without it, Tab goes the same way.
 */
(() => {
  const rows = [...document.querySelectorAll('.rows .row')];
  const hint = document.getElementById('keys');
  if (!rows.length || !hint) return;
  hint.hidden = false;

  document.addEventListener('keydown', event => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey || event.isComposing) return;
    const step = {j: 1, k: -1}[event.key.toLowerCase()];
    const row = document.activeElement && document.activeElement.closest('.row');
    if (!step || !row) return;
    const next = rows[rows.indexOf(row) + step];
    if (next) next.querySelector('.animal').focus();
    event.preventDefault();
  });
})();
