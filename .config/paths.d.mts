export const root: string;
export const cacheFolder: string;
