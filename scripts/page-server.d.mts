import type { Server } from "node:http";

export declare function pageServer(folder: string): Server;
