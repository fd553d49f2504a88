// The screens that are fetched together, after the first one: they share most of what they are made of, and one fetch is
// quicker than eight. The four pictures (ladder, deal, cash, roll-out) and "Where from?" are fetches of their own.
// Worked example: the first tap on "Start yours" fetches this; from then on all of these are there.
export { AboutSheet } from '../about/index.tsx';
export { OwnKeys } from '../front/own-keys.tsx';
export { FrontFoot, FrontSide } from '../front/side.tsx';
export { WhatComesWhen } from '../front/what-comes-when.tsx';
export { InputsScreen } from '../inputs/index.tsx';
export { InputsList } from '../inputs/list.tsx';
export { InputsSheet } from '../inputs/sheet.tsx';
export { PlansScreen } from '../plans/index.tsx';
export { SevenScreen } from '../seven/index.tsx';
export { NotComputed } from './not-computed.tsx';
