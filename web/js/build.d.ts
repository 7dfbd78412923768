// What the build and the Go toolchain bring with them.
declare const WORKER_URL: string;
declare const CORE_URL: string;
declare const SITE: { version: string; files: string[] };
declare module 'wasm_exec';
declare class Go {
  importObject: WebAssembly.Imports;
  run(instance: WebAssembly.Instance): Promise<void>;
}
declare var twoleaf: { call(method: string, args: string): string; version: string } | undefined;
