/* A small entry, so that the page's frame and what it will need at once are fetched side by side. */
void import("./start");
