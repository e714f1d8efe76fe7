/** Puts the focus on the first field of a form that is marked as at fault, once React has drawn the marks. */
export function focusFirstFault(form: HTMLFormElement): void {
  window.requestAnimationFrame(() => {
    const field = form.querySelector<HTMLElement>('[aria-invalid="true"], [data-fault="true"]');
    field?.focus();
  });
}
