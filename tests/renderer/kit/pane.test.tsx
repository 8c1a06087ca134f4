import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Pane } from '#renderer/kit/pane.tsx';

afterEach(cleanup);

function Part({ fault }: { fault: { message: string } }) {
  if (fault.message !== '') throw new TypeError(fault.message);
  return <p>the part</p>;
}

describe('Pane', () => {
  it('says that a part broke, leaves the rest standing, and shows it again', async () => {
    vi.spyOn(console, 'error').mockImplementation(() => undefined);
    const fault = { message: 'a fault of ours' };
    render(
      <>
        <p>the rest</p>
        <Pane>
          <Part fault={fault} />
        </Pane>
      </>,
    );
    expect(screen.getByRole('alert').textContent).toContain('Nothing you typed is lost.');
    expect(screen.getByText('the rest')).toBeDefined();

    fault.message = '';
    await userEvent.setup().click(screen.getByRole('button', { name: 'Show again' }));

    expect(screen.getByText('the part')).toBeDefined();
    vi.restoreAllMocks();
  });

  it('loads the page anew when its own file is gone, as after an update', async () => {
    vi.spyOn(console, 'error').mockImplementation(() => undefined);
    const reload = vi.fn();
    vi.spyOn(window.location, 'reload').mockImplementation(reload);
    const fault = { message: 'Failed to fetch dynamically imported module: /assets/papers-1.js' };
    render(
      <Pane>
        <Part fault={fault} />
      </Pane>,
    );

    await userEvent.setup().click(screen.getByRole('button', { name: 'Show again' }));

    expect(reload).toHaveBeenCalled();
    vi.restoreAllMocks();
  });
});
