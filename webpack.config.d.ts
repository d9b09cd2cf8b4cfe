import type { Configuration } from "webpack";

declare function configurations(env?: { origin?: string; into?: string }): Configuration[];
export default configurations;
