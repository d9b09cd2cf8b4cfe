/* Runs in the page of scripts/bench-hold.ts, ahead of the double of office.js. */
import { madeUpSheetsAndPrices } from "./bench-sheets";

declare const FILLS: number;

Object.assign(window, { opened: { sheets: madeUpSheetsAndPrices(FILLS) } });
