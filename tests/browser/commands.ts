/** What a browser test may ask of the Node side. */
export const keyblockCommands = {};
