/** Somebody's name and PIN for one act, as every area asks for it. */
export { NameAndPin } from '../../../kit/name-and-pin.tsx';
