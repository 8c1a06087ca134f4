import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it } from 'vitest';
import { nextRow, Row, RowGroup, Rows } from '#renderer/kit/rows.tsx';

afterEach(cleanup);

describe('Rows', () => {
  it('walks through two lists as one with Up and Down', async () => {
    render(
      <RowGroup>
        <Rows label="Ring back">
          <Row title="Walt" href="#/1" />
        </Rows>
        <Rows label="Quotes">
          <Row title="Calder" href="#/2" />
          <Row title="Ines" href="#/3" />
        </Rows>
      </RowGroup>,
    );
    const user = userEvent.setup();
    await user.tab();

    await user.keyboard('{ArrowDown}');
    expect(document.activeElement?.textContent).toBe('Calder');
    await user.keyboard('{ArrowDown}');
    expect(document.activeElement?.textContent).toBe('Ines');
    await user.keyboard('{ArrowUp}{ArrowUp}');
    expect(document.activeElement?.textContent).toBe('Walt');
  });

  it('is a list of links for a screen reader', () => {
    render(
      <Rows label="Ring back">
        <Row title="Walt" href="#/counter/ticket/7" />
      </Rows>,
    );

    expect(screen.getByRole('link', { name: 'Walt' }).getAttribute('href')).toBe('#/counter/ticket/7');
  });
});

describe('nextRow', () => {
  it.each([
    ['ArrowDown', -1, 3, 0],
    ['ArrowDown', 2, 3, 2],
    ['ArrowUp', 0, 3, 0],
    ['Home', 2, 3, 0],
    ['End', 0, 3, 2],
    ['Home', -1, 3, null],
    ['ArrowDown', -1, 0, null],
    ['x', 1, 3, null],
  ])('%s from %i of %i', (key, at, count, next) => {
    expect(nextRow(key, at, count)).toBe(next);
  });
});
