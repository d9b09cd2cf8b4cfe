/** One kind of object in office.js, with the members that the adapter uses. */
export interface ObjectType {
  /** Values that must be loaded before they are read. */
  readonly values?: readonly string[];
  /** What a collection holds, once loaded. */
  readonly items?: string;
  /** Properties that lead to another object without asking Excel. */
  readonly properties?: Readonly<Record<string, string>>;
  /** Methods that give an object. */
  readonly objects?: Readonly<Record<string, string>>;
  /** Methods that give a value, which is there after the next sync. */
  readonly results?: readonly string[];
  /** Methods that give nothing. */
  readonly actions?: readonly string[];
  /** Events, with the methods that office.js calls to hear of them or no more. */
  readonly events?: Readonly<Record<string, { readonly hear: string; readonly cease: string }>>;
}

/** As much of the Excel object model as the adapter uses. Whatever is not here, the double refuses to know. */
export const OBJECT_MODEL: Readonly<Record<string, ObjectType>> = {
  Workbook: {
    properties: {
      worksheets: "WorksheetCollection",
      customXmlParts: "CustomXmlPartCollection",
      functions: "Functions",
    },
    objects: { getActiveCell: "Range" },
  },
  WorksheetCollection: {
    items: "Worksheet",
    objects: { getItem: "Worksheet", getItemOrNullObject: "Worksheet", getActiveWorksheet: "Worksheet" },
    events: {
      onChanged: { hear: "_RegisterChangedEvent", cease: "_UnregisterChangedEvent" },
      onSelectionChanged: {
        hear: "_RegisterSelectionChangedEvent",
        cease: "_UnregisterSelectionChangedEvent",
      },
    },
  },
  Worksheet: {
    values: ["id", "name", "visibility"],
    objects: { getRangeByIndexes: "Range", getUsedRangeOrNullObject: "Range" },
    actions: ["activate"],
  },
  Range: {
    values: [
      ...["rowIndex", "columnIndex", "rowCount", "columnCount", "rowHidden"],
      ...["values", "valueTypes", "numberFormat", "text", "formulas"],
    ],
    objects: { getMergedAreasOrNullObject: "RangeAreas", getSpillParentOrNullObject: "Range" },
    results: ["getRowProperties"],
    actions: ["select"],
  },
  RangeAreas: { values: ["areaCount"], properties: { areas: "RangeCollection" } },
  RangeCollection: { items: "Range" },
  CustomXmlPartCollection: {
    objects: { add: "CustomXmlPart", getByNamespace: "CustomXmlPartScopedCollection" },
  },
  CustomXmlPartScopedCollection: { items: "CustomXmlPart", objects: { getItem: "CustomXmlPart" } },
  CustomXmlPart: { values: ["id"], results: ["getXml"], actions: ["setXml", "delete"] },
  Functions: { objects: { date: "FunctionResult" } },
  FunctionResult: { values: ["value"] },
};

/** The requirement sets of members that came after ExcelApi 1.12, which the manifest asks for. */
export const NEEDS: Readonly<Record<string, string>> = { getMergedAreasOrNullObject: "1.13" };
