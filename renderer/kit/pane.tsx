/** Part of a page that may fail or take its time by itself, without taking the rest with it. */
import { Component, type ReactNode, Suspense } from 'react';
import type { RequestRefused } from '../client/request-refused.ts';
import { Button } from './button.tsx';
import { ErrorNote, Notice } from './notice.tsx';
import { PageName } from './sheet.tsx';

/** Shows its children, words while they are fetched, and a way back when they broke. */
export function Pane({ children }: { children: ReactNode }) {
  return (
    <Catch>
      <Suspense fallback={<Waiting />}>{children}</Suspense>
    </Catch>
  );
}

/** Words while something is on its way; never a spinner. */
export function Waiting({ words = 'Opening...' }: { words?: string }) {
  return <p role="status">{words}</p>;
}

/** In place of a page whose answer was refused: why, and the way to ask again. */
export function PageRefused({ error, onAgain }: { error: RequestRefused; onAgain?: (() => void) | undefined }) {
  return (
    <div>
      <PageName>Not shown</PageName>
      <ErrorNote error={error} acts={onAgain && <Button onPress={onAgain}>Try again</Button>} />
    </div>
  );
}

type CatchState = { broken: boolean; outdated: boolean };

/** What browsers say when a page's own file is gone, as after an update of the program. */
const FILE_GONE = /dynamically imported module|module script/i;

class Catch extends Component<{ children: ReactNode }, CatchState> {
  override state: CatchState = { broken: false, outdated: false };

  static getDerivedStateFromError(error: unknown): CatchState {
    return { broken: true, outdated: error instanceof Error && FILE_GONE.test(error.message) };
  }

  /** A file that is gone does not come back by asking again: the whole page is loaded anew. */
  readonly again = (): void => {
    if (this.state.outdated) window.location.reload();
    else this.setState({ broken: false, outdated: false });
  };

  override render(): ReactNode {
    if (!this.state.broken) return this.props.children;
    return (
      <Notice kind="wrong" acts={<Button onPress={this.again}>Show again</Button>}>
        <b>This part could not be shown.</b> Nothing you typed is lost.
      </Notice>
    );
  }
}
