/** The vacuum test of ports. The quantities of the first catalogue were read at valves; older workspaces still show them. */
import { type Quantity, quantity, valve, word } from '../quantity.ts';

const port = { spotKind: 'port', sideMatters: true } as const;
const vacuum = { ...port, family: 'pressure', unit: 'inHg' } as const;

export const PORTS: readonly Quantity[] = [
  quantity('port-vacuum-how', 'seats tested', { ...port, ...word, choices: ['dry', 'oiled'] }),
  quantity('port-vacuum-start', 'vacuum, start', { ...vacuum, over: 'too high', under: 'too low' }),
  quantity('port-vacuum-end', 'vacuum, end', { ...vacuum, over: 'too high', under: 'too low' }),
  quantity('port-vacuum-seconds', 'seconds between, 10 unless said', {
    ...port,
    family: 'duration',
    unit: 's',
    over: 'too long',
    under: 'too short',
    optional: true,
  }),
  quantity('port-vacuum-fall', 'fall in 10 s', {
    ...vacuum,
    derived: 'port-vacuum-fall',
    signed: true,
    over: 'falls too fast',
  }),
  quantity('port-blocked-start', 'guide blocked: vacuum, start', {
    ...vacuum,
    over: 'too high',
    under: 'too low',
    optional: true,
  }),
  quantity('port-blocked-end', 'guide blocked: vacuum, end', {
    ...vacuum,
    over: 'too high',
    under: 'too low',
    optional: true,
  }),
  quantity('port-blocked-fall', 'guide blocked: fall in 10 s', {
    ...vacuum,
    derived: 'port-blocked-fall',
    signed: true,
    over: 'falls too fast',
    optional: true,
  }),
  quantity('port-volume', 'volume of port and hose', { ...port, family: 'volume', unit: 'cc', optional: true }),
  quantity('port-leak', 'leak, free air a minute', {
    ...port,
    family: 'volume',
    unit: 'cc',
    signed: true,
    derived: 'port-leak',
    optional: true,
  }),
  quantity('local-pressure', 'air pressure of the day, not reduced to sea level', {
    family: 'pressure',
    unit: 'inHg',
    over: 'too high',
    under: 'too low',
    optional: true,
  }),
  quantity('vacuum-start', 'vacuum, start', { ...valve, family: 'pressure', unit: 'inHg' }),
  quantity('vacuum-end', 'vacuum, after 10 s', { ...valve, family: 'pressure', unit: 'inHg' }),
  quantity('vacuum-hold', 'vacuum, fall in 10 s', {
    ...valve,
    family: 'pressure',
    unit: 'inHg',
    derived: 'vacuum-fall',
    over: 'falls too fast',
  }),
];
