import { createContext, useContext } from "react";
import type { Receipt } from "../../counter/receive/receipt";
import type { Units } from "../../gas/units";
import type { Workbook } from "../../workbook/workbook";
import type { Shop } from "../shop/useShop";
import type { FillForm } from "../../counter/form";
import type { FillModel } from "../../counter/plan/model";
import type { FormState } from "./useFillForm";
import type { Register } from "./useRegister";

/** All that the screens of the area share. */
export interface Filling extends FormState {
  readonly workbook: Workbook;
  readonly shop: Shop;
  readonly country: string;
  readonly units: Units;
  readonly register: Register;
  /** The cylinder on the counter, once it was looked up. */
  readonly receipt: Receipt | undefined;
  readonly model: FillModel;
}

const Context = createContext<Filling | undefined>(undefined);
export const FillProvider = Context.Provider;

export function useFilling(): Filling {
  const filling = useContext(Context);
  if (!filling) throw new Error("A screen of the fill area outside of it.");
  return filling;
}

export function isTicked({ ticked }: FillForm, name: string): boolean {
  return ticked.includes(name);
}

export function withTick(form: FillForm, name: string, on: boolean): FillForm {
  const others = form.ticked.filter((other) => other !== name);
  return { ...form, ticked: on ? [...others, name] : others };
}
