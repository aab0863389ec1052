export interface Served {
  address: string;
  port: number;
  close: () => Promise<void>;
}
export function serveSite(port?: number): Promise<Served>;
