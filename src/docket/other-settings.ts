import { createContext } from 'react';

/** All settings of the node in the docket, defaults filled in: a setting by plate shows the general one it departs from. */
export const OtherSettings = createContext<Readonly<Record<string, unknown>>>({});
