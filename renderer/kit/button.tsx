/** Buttons. One go button a screen or pane: it names the act and the amount. */
import { useId } from 'react';
import css from './button.module.css';
import { classes } from './class-names.ts';
import { Keys } from './key-hints.tsx';

export type ButtonProps = Readonly<{
  children: React.ReactNode;
  /** `go`: dye with a scribed line. `out`: a way out of the ordinary, dashed. `found`: paint, bench only. */
  kind?: 'go' | 'plain' | 'out' | 'found';
  /** Keys that do the same, shown inside: `Ctrl Enter`. */
  keys?: string | undefined;
  onPress?: (() => void) | undefined;
  /** Why it is shut, in words; shown beside it and read aloud. Empty or undefined: open. */
  shut?: string | undefined;
  /** True while its command is on its way. */
  working?: boolean | undefined;
  /** An address of this app instead of an act. */
  href?: string | undefined;
  type?: 'button' | 'submit';
  /** For a choice that is on or off. */
  pressed?: boolean | undefined;
  label?: string | undefined;
  /** Fills the width its parent gives. */
  wide?: boolean;
}>;

export function Button(props: ButtonProps) {
  const { children, kind = 'plain', keys, shut, working = false, href, wide = false } = props;
  const reason = useId();
  const name = classes(css.button, css[kind], (shut || working) && css.shut, props.pressed && css.on, wide && css.wide);
  const inside = (
    <>
      {working ? <span>{children}, keeping...</span> : children}
      {keys && !shut && <Keys keys={keys} />}
    </>
  );
  if (href !== undefined && !shut) {
    return (
      <a className={name} href={href} aria-label={props.label}>
        {inside}
      </a>
    );
  }
  const button = (
    <button
      type={props.type ?? 'button'}
      className={name}
      aria-disabled={Boolean(shut) || working}
      aria-describedby={shut ? reason : undefined}
      aria-pressed={props.pressed}
      aria-label={props.label}
      onClick={(event) => {
        if (shut || working) event.preventDefault();
        else props.onPress?.();
      }}
    >
      {inside}
    </button>
  );
  if (!shut) return button;
  return (
    <span className={classes(css.pair, wide && css.wide)}>
      {button}
      <span id={reason} className={css.reason}>
        {shut}
      </span>
    </span>
  );
}

/** The go button of the page: what the hand does next. */
export function GoButton(props: Omit<ButtonProps, 'kind'>) {
  return <Button {...props} kind="go" />;
}
