/** One kind of object in office.js, with the members that the adapter uses. */
export interface ObjectType {
  /** Values that must be loaded before they are read. */
  readonly values?: readonly string[];
  /** Values that may be set. */
  readonly sets?: readonly string[];
  /** Everything below it is only written, never read: it takes whatever it is given, and the fake keeps a note of it. */
  readonly open?: true;
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
  /** Events, with what office.js calls them when it asks to hear of them (`_Register…Event`). */
  readonly events?: Readonly<Record<string, string>>;
}

/** As much of the Excel object model as the adapter uses. Whatever is not here, the double refuses to know. */
export const OBJECT_MODEL: Readonly<Record<string, ObjectType>> = {
  Workbook: {
    properties: {
      worksheets: "WorksheetCollection",
      customXmlParts: "CustomXmlPartCollection",
      functions: "Functions",
      application: "Application",
      tables: "TableCollection",
    },
    objects: { getActiveCell: "Range", getSelectedRanges: "RangeAreas" },
  },
  WorksheetCollection: {
    items: "Worksheet",
    objects: {
      ...{ getItem: "Worksheet", getItemOrNullObject: "Worksheet", getActiveWorksheet: "Worksheet" },
      add: "Worksheet",
    },
    events: {
      ...{ onChanged: "DataChanged", onFormatChanged: "FormatChanged", onCalculated: "Calculated" },
      ...{ onRowSorted: "RowSorted", onSelectionChanged: "SelectionChanged" },
      ...{ onAdded: "Added", onDeleted: "Deleted", onNameChanged: "NameChanged" },
      ...{ onVisibilityChanged: "VisibilityChanged", onMoved: "Moved" },
    },
  },
  Worksheet: {
    values: ["id", "name", "visibility"],
    sets: ["showGridlines"],
    properties: {
      ...{ charts: "Looks", freezePanes: "Looks", pageLayout: "Looks" },
      ...{ tables: "NewTables", protection: "Protection" },
    },
    objects: {
      ...{ getRange: "Range", getRangeByIndexes: "Range", getRanges: "RangeAreas" },
      getUsedRangeOrNullObject: "Range",
    },
    actions: ["activate", "delete"],
  },
  Range: {
    values: [
      ...["rowIndex", "columnIndex", "rowCount", "columnCount", "rowHidden"],
      ...["values", "valueTypes", "numberFormat", "text", "formulas"],
    ],
    sets: ["formulas", "numberFormat", "hyperlink"],
    properties: { format: "Looks", conditionalFormats: "ConditionalFormatCollection" },
    objects: {
      ...{ getMergedAreasOrNullObject: "RangeAreas", getSpillParentOrNullObject: "Range" },
      ...{ getSpecialCellsOrNullObject: "RangeAreas", getEntireRow: "Range" },
    },
    results: ["getRowProperties"],
    actions: ["select", "merge", "insert"],
  },
  RangeAreas: {
    values: ["areaCount"],
    properties: { areas: "RangeCollection", conditionalFormats: "ConditionalFormatCollection" },
  },
  Looks: { open: true },
  NewTables: { objects: { add: "NewTable" } },
  NewTable: { sets: ["name", "style", "showBandedRows"] },
  TableCollection: { items: "Table", objects: { getItem: "Table" } },
  Table: { values: ["id", "name"] },
  Protection: { values: ["protected"] },
  ConditionalFormatCollection: {
    items: "ConditionalFormat",
    objects: { add: "ConditionalFormat", getItem: "ConditionalFormat" },
  },
  ConditionalFormat: {
    values: ["id", "type"],
    properties: { custom: "CustomConditionalFormat" },
    actions: ["delete"],
  },
  CustomConditionalFormat: { properties: { rule: "ConditionalFormatRule", format: "Looks" } },
  ConditionalFormatRule: { values: ["formula"], sets: ["formula"] },
  RangeCollection: { items: "Range" },
  CustomXmlPartCollection: {
    objects: { add: "CustomXmlPart", getByNamespace: "CustomXmlPartScopedCollection" },
  },
  CustomXmlPartScopedCollection: { items: "CustomXmlPart", objects: { getItem: "CustomXmlPart" } },
  CustomXmlPart: { values: ["id"], results: ["getXml"], actions: ["setXml", "delete"] },
  Functions: { objects: { date: "FunctionResult", year: "FunctionResult" } },
  Application: { actions: ["calculate"] },
  FunctionResult: { values: ["value"] },
};

/** The requirement sets of members that came after ExcelApi 1.12, which the manifest asks for. */
export const NEEDS: Readonly<Record<string, string>> = {
  getMergedAreasOrNullObject: "1.13",
  ...{ onNameChanged: "1.17", onVisibilityChanged: "1.17", onMoved: "1.17" },
};
