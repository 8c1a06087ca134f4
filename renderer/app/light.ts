/** Day or evening light: a switch remembered on this machine, never automatic. */
import { useState } from 'react';

export type Light = 'day' | 'evening';
const NAME = 'benchtag-light';

/** What this machine remembers; day where nothing is remembered or storage is shut. */
export function rememberedLight(): Light {
  try {
    return localStorage.getItem(NAME) === 'evening' ? 'evening' : 'day';
  } catch {
    return 'day';
  }
}

/** Puts a light on the whole page and remembers it. */
export function setLight(light: Light): void {
  document.documentElement.dataset.light = light;
  try {
    localStorage.setItem(NAME, light);
  } catch {
    // The light is on; only the memory is shut.
  }
}

/** The light and the switch. */
export function useLight(): [Light, () => void] {
  const [light, set] = useState(rememberedLight);
  return [
    light,
    () => {
      const other = light === 'day' ? 'evening' : 'day';
      setLight(other);
      set(other);
    },
  ];
}
