import type { FocusEvent, KeyboardEvent, MouseEvent } from "react";

type Field = HTMLInputElement;

/** Fields that have just been entered; the pointer that did it must not put the cursor into the text again. */
const entered = new WeakSet<Field>();

/** Handlers of a field whose content is selected when it is entered, so that typing replaces it; a second tap sets the cursor. */
export const selectWhenEntered = {
  onFocus: ({ currentTarget }: FocusEvent<Field>) => {
    entered.add(currentTarget);
    currentTarget.select();
  },
  onMouseUp: (event: MouseEvent<Field>) => {
    const field = event.currentTarget;
    if (!entered.delete(field)) return;
    event.preventDefault();
    if (field.selectionStart === field.selectionEnd) field.select();
  },
  onKeyDown: ({ currentTarget }: KeyboardEvent<Field>) => {
    entered.delete(currentTarget);
  },
};
