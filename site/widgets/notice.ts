/** Words of the page to the reader. */

interface Choice {
  readonly words: string;
  readonly take: () => void;
}

/** Says something to screen readers without moving anyone's focus; the one status line of the page. */
export function announce(words: string): void {
  const line = document.querySelector<HTMLElement>('[data-status]');
  if (line) line.textContent = words;
}

/**
 * Puts a message at the head of the page, with what can be done about it. It stays until the reader closes it or
 * takes a choice; a second message with the same name takes the place of the first.
 */
export function notice(name: string, words: string, choices: readonly Choice[] = []): void {
  const place = document.querySelector('[data-notices]');
  if (!place) return;
  place.querySelector(`[data-notice="${name}"]`)?.remove();
  const box = document.createElement('div');
  box.className = 'notice';
  box.dataset['notice'] = name;
  box.setAttribute('role', 'alert');
  const text = document.createElement('p');
  text.textContent = words;
  const buttons = document.createElement('div');
  buttons.className = 'notice-choices';
  for (const { words: label, take } of [...choices, { words: 'Close', take: () => undefined }]) {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = label;
    button.addEventListener('click', () => {
      box.remove();
      take();
    });
    buttons.append(button);
  }
  box.append(text, buttons);
  place.append(box);
}
