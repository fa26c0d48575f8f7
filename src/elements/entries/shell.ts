import { carryOnDoor } from '../shell/carryOn.ts';
import { keepOffline } from '../shell/offline.ts';
import { scriptsOnDemand } from '../shell/onDemand.ts';
import { SettingsForm } from '../shell/settingsForm.ts';
import { bookAddress } from '../dom.ts';

customElements.define('book-settings', SettingsForm);

carryOnDoor();
scriptsOnDemand();

// Ctrl or Cmd and K goes to the search field; a single key would get in the way of speech input (WCAG 2.1.4).
document.addEventListener('keydown', (event) => {
  if (event.key.toLowerCase() !== 'k' || !(event.ctrlKey || event.metaKey) || event.altKey || event.shiftKey) return;
  event.preventDefault();
  const field = document.querySelector<HTMLInputElement>('book-search input[type="search"]');
  if (field) field.focus();
  else location.assign(bookAddress('search/'));
});

// Everything that folds away is open on paper.
addEventListener('beforeprint', () => {
  for (const fold of document.querySelectorAll<HTMLDetailsElement>('details.below, details.below-outcome')) fold.open = true;
});

void keepOffline();
