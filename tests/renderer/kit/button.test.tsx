import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Button } from '#renderer/kit/button.tsx';

afterEach(cleanup);

describe('Button', () => {
  it('says why it is shut, to eye and ear, and does nothing', async () => {
    const press = vi.fn();
    render(
      <Button onPress={press} shut="Opens when every line is counted.">
        Release 6 pieces
      </Button>,
    );

    const button = screen.getByRole('button', { name: 'Release 6 pieces' });
    await userEvent.setup().click(button);

    expect(press).not.toHaveBeenCalled();
    expect(button.getAttribute('aria-disabled')).toBe('true');
    const reason = document.getElementById(button.getAttribute('aria-describedby') ?? '');
    expect(reason?.textContent).toBe('Opens when every line is counted.');
  });

  it('cannot be pressed twice while its command is on its way', async () => {
    const press = vi.fn();
    render(
      <Button onPress={press} working>
        Take 544.47
      </Button>,
    );

    await userEvent.setup().dblClick(screen.getByRole('button'));

    expect(press).not.toHaveBeenCalled();
    expect(screen.getByRole('button').textContent).toContain('keeping...');
  });
});
